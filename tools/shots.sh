#!/usr/bin/env bash
# shots.sh DEST DIR...: every paper under each DIR as pictures under DEST, one
# PNG a page, to be looked at.
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
echo "$(find "$dest" -name '*.png' -type f | wc -l) pictures in $dest"
