# make demo     set up, work the demo piece, write its papers, serve the page (DEMO_ONCE=1: end instead)
# make test     set up what tests need, run everything not marked slow
# make check    lint, format, types, import contracts, digest of the built page, then the same tests
# make slow     the slow tests, and the page built again from its sources
# make bench    measure; adds a line to bench/history.jsonl
# make approve  rewrite the approved files, to be read in the diff
#
# Set-up happens once per change of requirements/; after it nothing here needs the network.

SHELL := /bin/bash
.SHELLFLAGS := -euo pipefail -c
.DELETE_ON_ERROR:
.DEFAULT_GOAL := test
.PHONY: demo test check lint style types contracts digest slow bench approve page lock browser

BIN := .venv/bin
PIP := $(BIN)/python -m pip --disable-pip-version-check --quiet --no-input
ONCE := $(if $(filter-out 0,$(DEMO_ONCE)),--once)
ARGS ?=
# The quick tests run on every core, those of a file together: what they share is then made once.
TOGETHER := -n auto --maxprocesses 8 --dist loadfile

# A stamp is newer than what it was made from. The package itself is installed as a link to src/.
RUN := .venv/run.stamp
DEV := .venv/dev.stamp
SLOW := .venv/slow.stamp

demo: $(RUN)
	$(BIN)/scantling demo $(ONCE)

test: $(DEV) browser
	$(BIN)/python -m pytest -m "not slow" $(TOGETHER) $(ARGS)

check: lint test

# The checks know nothing of each other: side by side, what each says kept together.
CHECKS := style types contracts digest

lint: $(DEV)
	@$(MAKE) --no-print-directory --jobs --output-sync=target $(CHECKS)

style: $(DEV)
	$(BIN)/ruff check .
	$(BIN)/ruff format --check .

types: $(DEV)
	$(BIN)/mypy src tests tools $(wildcard bench)

contracts: $(DEV)
	$(BIN)/lint-imports

digest: $(DEV)
	$(BIN)/python tools/page_digest.py --check

slow: $(SLOW) browser
	$(BIN)/python -m pytest -m slow $(ARGS)
	tools/build_page --check

bench: $(SLOW)
	$(BIN)/python bench/run.py $(ARGS)

approve: $(DEV)
	$(BIN)/python -m pytest -m "not slow" --approve $(ARGS)

page: $(DEV)
	tools/build_page

browser:
	@tools/ensure_chromium

lock:
	tools/lock

# pip is what making .venv ends with, so one that was broken off is made again.
.venv/bin/pip:
	@echo "Setting up .venv, once: a minute or so."
	@tools/make_venv

$(RUN): requirements/build.txt requirements/run.txt pyproject.toml | .venv/bin/pip
	@$(PIP) install --require-hashes -r requirements/build.txt -r requirements/run.txt
	@$(PIP) install --no-build-isolation --no-deps --editable .
	@touch $@

$(DEV): requirements/dev.txt $(RUN)
	@$(PIP) install --require-hashes -r requirements/dev.txt
	@touch $@

$(SLOW): requirements/slow.txt $(DEV)
	@$(PIP) install --require-hashes -r requirements/slow.txt
	@touch $@
