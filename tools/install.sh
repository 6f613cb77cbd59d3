#!/usr/bin/env bash
# Installs what the tests use: Debian's packages where we are root on Debian,
# axe-core from npm into .cache/node, and the linter and formatter, built from
# tools/go.mod into .cache/bin.
# Elsewhere it says what to install. Quick when all of it is there.
set -euo pipefail
source "$(dirname "${BASH_SOURCE[0]}")/lib.sh"

# Why each: poppler-utils measures our PDFs, python3-ezdxf reads our DXF,
# python3-scipy is the benchmarks' peer, units is the oracle for quantities,
# python3-periodictable for molar masses;
# the others read our calendars, sheets and pages.
debian_packages=(
	chromium
	fonts-dejavu-core
	poppler-utils
	python3-ezdxf
	python3-icalendar
	python3-openpyxl
	python3-periodictable
	python3-scipy
	units
)

missing_packages() {
	local package
	for package in "${debian_packages[@]}"; do
		if ! dpkg-query -W -f '${db:Status-Status}\n' "$package" 2>/dev/null | grep -qx installed; then
			echo "$package"
		fi
	done
}

say_what_to_install() {
	echo "The tests use these programs (Debian's names); install them in your system's way:"
	printf '  %s\n' "${debian_packages[@]}"
	echo "What is missing is skipped by 'make test' and named at its end."
}

install_packages() {
	if ! command -v dpkg-query >/dev/null || ! command -v apt-get >/dev/null; then
		say_what_to_install
		return
	fi
	local missing
	mapfile -t missing < <(missing_packages)
	if [ "${#missing[@]}" -eq 0 ]; then
		echo "Debian packages: all ${#debian_packages[@]} there"
		return
	fi
	if [ "$(id -u)" -ne 0 ]; then
		say_what_to_install
		echo "On this machine:  sudo apt-get install --no-install-recommends ${missing[*]}"
		return
	fi
	local waiting=(-o DPkg::Lock::Timeout=300 -o Acquire::Retries=3 -qq)
	apt-get "${waiting[@]}" update
	DEBIAN_FRONTEND=noninteractive apt-get "${waiting[@]}" install -y --no-install-recommends "${missing[@]}" >/dev/null
	echo "Debian packages: installed ${missing[*]}"
}

# Both programs live in a module of their own, so that their hundreds of
# dependencies stay out of the program's go.mod.
build_go_tools() {
	local stamp
	stamp=$(tools_stamp)
	if [ "$(cat "$tool_dir/stamp" 2>/dev/null)" = "$stamp" ]; then
		echo "golangci-lint and gofumpt: there"
		return
	fi
	mkdir -p "$tool_dir"
	(cd tools && CGO_ENABLED=0 GOBIN="$tool_dir" go install tool)
	echo "$stamp" >"$tool_dir/stamp"
	echo "golangci-lint and gofumpt: built into .cache/bin"
}

# The check of the pages for people who cannot see or use a mouse runs in the
# browser of the tests; tools/npm pins it with its sum.
install_npm_packages() {
	if cmp -s tools/npm/package-lock.json "$node_dir/package-lock.json" && [ -e "$node_dir/node_modules/axe-core/axe.min.js" ]; then
		echo "axe-core: there"
		return
	fi
	if ! command -v npm >/dev/null; then
		if [ "$(id -u)" -ne 0 ] || ! command -v apt-get >/dev/null; then
			echo "Install npm in your system's way and run this again; without it the pages are not checked with axe-core."
			return
		fi
		DEBIAN_FRONTEND=noninteractive apt-get -o DPkg::Lock::Timeout=300 -o Acquire::Retries=3 -qq install -y --no-install-recommends npm >/dev/null
	fi
	mkdir -p "$node_dir"
	cp tools/npm/package.json tools/npm/package-lock.json "$node_dir/"
	npm ci --prefix "$node_dir" --no-audit --no-fund --ignore-scripts --loglevel=error
	echo "axe-core: installed into .cache/node"
}

step "Debian packages" install_packages
step "packages of npm" install_npm_packages
step "linter and formatter" build_go_tools
