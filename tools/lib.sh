# Shared by the scripts beside it: where things are and how a step reports itself.
# shellcheck shell=bash

root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
tool_dir="$root/.cache/bin"
node_dir="$root/.cache/node"
cd "$root" || exit 3

# Folders that hold Go code of the program.
code_dirs=()
for dir in bench cmd internal; do
	[ ! -d "$dir" ] || code_dirs+=("$dir")
done

# step NAME COMMAND... runs one step and prints how many seconds it took.
step() {
	local name=$1 began=$SECONDS status=0
	shift
	echo "== $name"
	"$@" || status=$?
	echo "== $name: $((SECONDS - began)) s$([ "$status" -eq 0 ] || echo ", failed")"
	return "$status"
}

# in_ci says whether everything must be there: a missing tool is then a failure.
in_ci() {
	[ "${CI:-}" = true ]
}

# tools_stamp names what .cache/bin was built from.
tools_stamp() {
	{
		go env GOVERSION
		cat tools/go.mod tools/go.sum
	} | sha256sum | cut -d' ' -f1
}
