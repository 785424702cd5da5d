"""How long something took, in seconds of work: other work on the machine does not count."""

import resource


def by_children() -> float:
    """Seconds of work of all processes started so far that have ended. [s]"""
    spent = resource.getrusage(resource.RUSAGE_CHILDREN)
    return spent.ru_utime + spent.ru_stime
