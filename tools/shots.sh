#!/usr/bin/env bash
# shots.sh DEST DIR...: every paper under each DIR as pictures under DEST, one
# PNG a page, and under DEST/pages every page of the program at a desk, on a
# phone and printed, in both unit systems: all to be looked at.
set -euo pipefail
source "$(dirname "${BASH_SOURCE[0]}")/lib.sh"

if ! command -v pdftoppm >/dev/null; then
	echo "pdftoppm is not there: install poppler-utils ('make tools')" >&2
	exit 3
fi
dest=$1
shift
rm -rf "$dest"
for dir in "$@"; do
	while IFS= read -r paper; do
		picture="$dest/$(basename "$dir")/${paper#"$dir"/}"
		mkdir -p "$(dirname "$picture")"
		pdftoppm -r 80 -png "$paper" "${picture%.pdf}"
	done < <(find "$dir" -name '*.pdf' -type f | LC_ALL=C sort)
done
if command -v chromium >/dev/null; then
	mkdir -p "$dest/pages"
	ROOTBELL_SHOTS="$(realpath "$dest/pages")" go test -tags shots -count=1 -timeout 30m -run '^TestShots$' ./internal/app/web
	while IFS= read -r print; do
		pdftoppm -r 60 -png "$print" "${print%.pdf}"
		rm "$print"
	done < <(find "$dest/pages" -name '*-print.pdf' -type f | LC_ALL=C sort)
else
	echo "chromium is not there: no pictures of the pages ('make tools')" >&2
fi
echo "$(find "$dest" -name '*.png' -type f | wc -l) pictures in $dest"
