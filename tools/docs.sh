#!/usr/bin/env bash
# Writes everything that is generated (docs, schema, fact names) anew, and fails
# when that changed a file: then the tree held stale text, and now holds fresh.
set -euo pipefail
source "$(dirname "${BASH_SOURCE[0]}")/lib.sh"

before=$(mktemp)
after=$(mktemp)
trap 'rm -f "$before" "$after"' EXIT

# Only what a generator may write; sources under somebody's hand are not ours.
fingerprints() {
	{
		find docs examples -type f
		find internal -type f \( -name '*_gen.go' -o -name '*.json' -o -name '*.md' \)
	} | LC_ALL=C sort | tr '\n' '\0' | xargs -0 sha256sum
}

fingerprints >"$before"
go generate ./...
fingerprints >"$after"
if ! diff "$before" "$after" >/dev/null; then
	echo "stale, now written anew (look at them and commit):"
	diff "$before" "$after" | sed -n 's/^[<>] [0-9a-f]*  /  /p' | LC_ALL=C sort -u
	exit 1
fi
echo "generated docs are up to date"
