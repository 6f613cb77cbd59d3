#!/usr/bin/env bash
# Vet, format, lint, race and unit tests. Installs nothing. What could not run
# is listed at the end; with CI=true it is a failure instead. Every step runs
# even when an earlier one failed, and go test's own lines come last.
set -euo pipefail
source "$(dirname "${BASH_SOURCE[0]}")/lib.sh"

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
skipped="$work/skipped"
summary="$work/summary"
: >"$skipped"
: >"$summary"
failed=()

check() {
	step "$@" || failed+=("$1")
}

skip() {
	echo "$1" >>"$skipped"
}

# built_tool NAME prints where the tool is: ours first, then one on the PATH.
built_tool() {
	if [ -x "$tool_dir/$1" ]; then
		echo "$tool_dir/$1"
	else
		command -v "$1"
	fi
}

# What only 'make shots' runs must not rot unseen.
vet() {
	go vet ./... && go vet -tags shots ./internal/app/web
}

format() {
	local gofumpt unformatted
	if ! gofumpt=$(built_tool gofumpt); then
		skip "format: gofumpt is not there ('make tools' builds it)"
		return
	fi
	unformatted=$("$gofumpt" -l "${code_dirs[@]}")
	if [ -n "$unformatted" ]; then
		printf 'not gofumpt-formatted: %s\n' $unformatted
		return 1
	fi
}

lint() {
	local golangci
	if ! golangci=$(built_tool golangci-lint); then
		skip "lint: golangci-lint is not there ('make tools' builds it)"
		return
	fi
	"$golangci" run ./...
}

# The race detector slows a search tenfold, so only packages that start
# goroutines run under it: those with a go statement or a .Go( call.
racy_packages() {
	{ grep -rlE --include='*.go' '^[[:space:]]*go (func\b|[A-Za-z_][A-Za-z0-9_.]*\()|\.Go\(' "${code_dirs[@]}" || true; } |
		xargs -r -n1 dirname | LC_ALL=C sort -u | sed 's,^,./,'
}

race() {
	local packages
	mapfile -t packages < <(racy_packages)
	if [ "${#packages[@]}" -eq 0 ]; then
		echo "no package starts a goroutine"
		return
	fi
	if ! command -v "$(go env CC)" >/dev/null; then
		skip "race: the race detector needs a C compiler"
		return
	fi
	# It looks for races and not at values: the properties run in full below.
	RAPID_CHECKS=15 CGO_ENABLED=1 go test -race -timeout 40m "${packages[@]}"
}

# A verbose run is read as it comes: what fails is shown at once, skipped tests
# and go test's line for each package are kept for the end.
unit() {
	go test -timeout 20m -v ./... 2>&1 | awk -v skipped="$skipped" -v summary="$summary" '
		/^[[:space:]]*--- SKIP/ { print "test: " $3 >>skipped }
		function told(k) { for (k = 1; k <= n; k++) print held[k]; n = 0 }
		/^(ok  |\?   )\t/ { print >>summary; n = 0; next }
		/^FAIL\t/ { print >>summary; told(); print; fflush(); next }
		/^=== |^[[:space:]]*--- (PASS|SKIP)|^PASS$/ { next }
		/no test files/ { print >>summary; next }
		{ held[++n] = $0 }
		END { told() }'
}

check vet vet
check format format
check lint lint
check race race
check unit unit
echo "== all: $SECONDS s"

status=0
if [ -s "$skipped" ]; then
	echo "Skipped:"
	sed 's/^/  /' "$skipped"
	if in_ci; then
		echo "With CI=true nothing may be skipped."
		status=1
	fi
else
	echo "Skipped: nothing"
fi
if [ "${#failed[@]}" -gt 0 ]; then
	echo "Failed: ${failed[*]}"
	status=1
fi
cat "$summary"
exit "$status"
