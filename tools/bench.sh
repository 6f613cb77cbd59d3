#!/usr/bin/env bash
# Runs every benchmark and, for those that measure a peer in the same run,
# prints the ratio. Such a benchmark reports the metrics ours-s, peer-s, goal
# and quality. BENCHTIME as for go test (1s if not set), BENCH narrows by name.
set -euo pipefail
source "$(dirname "${BASH_SOURCE[0]}")/lib.sh"

log=$(mktemp)
trap 'rm -f "$log"' EXIT
mapfile -t packages < <(grep -rlE --include='*_test.go' '^func Benchmark' "${code_dirs[@]}" |
	xargs -r -n1 dirname | LC_ALL=C sort -u | sed 's,^,./,')
if [ "${#packages[@]}" -eq 0 ]; then
	echo "no benchmark yet"
	exit 0
fi
go test -run '^$' -bench "${BENCH:-.}" -benchmem -benchtime "${BENCHTIME:-1s}" -timeout 60m "${packages[@]}" | tee "$log"
awk '
	/^Benchmark/ {
		split("", metric)
		for (i = 3; i < NF; i += 2) metric[$(i + 1)] = $i
		if (!("ours-s" in metric) || !("peer-s" in metric) || metric["ours-s"] <= 0) next
		name = $1
		sub(/^Benchmark/, "", name)
		sub(/-[0-9]+$/, "", name)
		printf "ratio %s %.2f goal %s (ours %s s, peer %s s, quality %s)\n", name,
			metric["peer-s"] / metric["ours-s"],
			("goal" in metric) ? metric["goal"] : "none",
			metric["ours-s"], metric["peer-s"],
			("quality" in metric) ? metric["quality"] : "none"
	}' "$log"
