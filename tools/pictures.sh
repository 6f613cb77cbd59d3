#!/usr/bin/env bash
# Writes the README's pictures anew from the papers of the first example, and
# the guide's from the pages in a browser; run by hand after a change of the
# drawings or the pages, and look at them. What is printed in the
# README as text is held by a test instead.
set -euo pipefail
source "$(dirname "${BASH_SOURCE[0]}")/lib.sh"

if ! command -v pdftoppm >/dev/null; then
	echo "pdftoppm is not there: install poppler-utils ('make tools')" >&2
	exit 3
fi
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
CGO_ENABLED=0 go build -trimpath -o "$work/rootbell" ./cmd/rootbell
"$work/rootbell" pack examples/fernhollow.yaml -o "$work" >/dev/null

# picture NAME PAPER PAGE: one page of one paper, grey and small.
picture() {
	mkdir -p docs/pictures
	pdftoppm -r 72 -gray -png -singlefile -f "$3" -l "$3" "$work/build/$2" "docs/pictures/$1"
}

picture lid-sheet lid-Heron.pdf 2
picture helper-card helper-card.pdf 1
if command -v chromium >/dev/null; then
	ROOTBELL_GUIDE="$root/docs/pictures" go test -tags shots -count=1 -run '^TestGuide$' ./internal/app/web
else
	echo "chromium is not there: the guide's pictures stay as they are" >&2
fi
ls -l docs/pictures
