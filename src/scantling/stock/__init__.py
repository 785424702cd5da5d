"""Board survey, flattening, layout and its bound, buying, replay."""
