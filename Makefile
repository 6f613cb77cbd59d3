# What each target promises is written in docs/architecture.md and CONTRIBUTING.md.
# Nothing here needs more than Go to build; `make tools` installs what the tests need.

SHELL := /usr/bin/env bash
.SHELLFLAGS := -eu -o pipefail -c
.DEFAULT_GOAL := build

# The commit goes into the binary only where git can tell it.
BUILDVCS := $(shell git rev-parse --verify -q HEAD >/dev/null 2>&1 && git status --porcelain >/dev/null 2>&1 && echo auto || echo false)
EXAMPLES := fernhollow saltbrook

.PHONY: run demo build tools test bench bench-once calibrate docs shots clean

# PORT takes another port where 8420 is in use.
PORT ?= 8420

run: demo
	@bin/rootbell serve --listen 127.0.0.1:$(PORT)

demo: build
	@for name in $(EXAMPLES); do \
		book=(); \
		if [ -f "examples/$$name.csv" ]; then book=(--readings "examples/$$name.csv"); fi; \
		bin/rootbell pack "examples/$$name.yaml" $${book[@]+"$${book[@]}"} -o "out/$$name" >"out/$$name.txt"; \
	done
	@echo 'The papers of the two invented gardens:'
	@for name in $(EXAMPLES); do \
		find "out/$$name" -type f | LC_ALL=C sort | sed 's/^/  /'; \
	done
	@echo 'Start with out/fernhollow/build/lid-Heron.pdf, printed at 100 %.'

build:
	@mkdir -p bin out
	CGO_ENABLED=0 go build -trimpath -buildvcs=$(BUILDVCS) -o bin/rootbell ./cmd/rootbell

tools:
	@tools/install.sh

test:
	@tools/test.sh

bench:
	@tools/bench.sh

# Once each, so that a benchmark cannot rot; the figures mean nothing.
bench-once:
	@BENCHTIME=1x tools/bench.sh

# Five hundred invented seasons: how often the bands of a forecast hold. Takes
# some minutes; the figures go to docs/benchmarks.md by hand.
calibrate:
	go test -v -timeout 60m -run 'Calibration|WrongModel' ./internal/forecast -calibrate 500 -members 1000

docs:
	@tools/docs.sh

shots: demo
	@tools/shots.sh out/shots $(EXAMPLES:%=out/%)

clean:
	rm -rf bin out
