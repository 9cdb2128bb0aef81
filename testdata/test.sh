#!/bin/sh
# Everything that must hold before slipbook may be released, in one command:
#
#     sh testdata/test.sh
#
# On a bare Debian machine with Go it first installs the outside judges: browsers
# of three engines, web servers, a Java runtime for the Nu HTML checker, GNU units,
# a PDF reader, a C compiler for the race detector, a reader of what cameras write
# into photos, and node for the type checker of the scripts.
# Whatever is there already is left alone. A judge that is missing is a
# failure, never a pass. DEVELOPERS.md tells how to run a single part.
set -eu

cd "$(dirname "$0")/.."

started=$(date +%s)
steps=''

# say prints one line in the voice of this script.
say() {
	printf '\n== %s\n' "$*"
}

# stop prints why and ends the run.
stop() {
	printf '\n== STOPPED: %s\n' "$*" >&2
	exit 1
}

# step runs a command under a name and notes how long it took.
step() {
	name=$1
	shift
	say "$name"
	from=$(date +%s)
	"$@" || stop "$name"
	steps="$steps$(printf '%5d s  %s' "$(($(date +%s) - from))" "$name")
"
}

# prepare makes a home for caches where there is none to write to, finds Go
# where it is usually unpacked, and keeps Go from asking git about a checkout
# that belongs to somebody else.
prepare() {
	if [ -z "${HOME:-}" ] || [ ! -d "$HOME" ] || [ ! -w "$HOME" ]; then
		HOME=$(mktemp -d)
		export HOME
	fi
	command -v go >/dev/null 2>&1 || PATH=$PATH:/usr/local/go/bin
	command -v go >/dev/null 2>&1 || stop 'Go is not installed; see https://go.dev/dl/ (go.mod says which)'
	GOFLAGS="${GOFLAGS:+$GOFLAGS }-buildvcs=false"
	export GOFLAGS PATH
	go version
}

# tools installs from Debian what is not there yet.
tools() {
	missing=''
	# want COMMAND PACKAGE...: the packages are needed if there is no such command.
	want() {
		command -v "$1" >/dev/null 2>&1 && return
		shift
		missing="$missing $*"
	}
	want chromium chromium
	want java default-jre-headless
	want units units
	want pdftotext poppler-utils
	want gcc gcc libc6-dev
	want node nodejs
	want npm npm
	want exiftool libimage-exiftool-perl
	want zbarimg zbar-tools
	want firefox-esr firefox-esr
	want WebKitWebDriver webkit2gtk-driver
	want xvfb-run xvfb xauth
	want nginx nginx-light
	want busybox busybox
	want python3 python3-minimal
	if [ -z "$missing" ]; then
		echo 'nothing to install'
		return
	fi
	echo "to be installed:$missing"
	command -v apt-get >/dev/null 2>&1 ||
		stop "these commands' packages are missing and this is no Debian:$missing"
	as_root=''
	if [ "$(id -u)" -ne 0 ]; then
		command -v sudo >/dev/null 2>&1 || stop "run as root: apt-get install$missing"
		as_root=sudo
	fi
	$as_root apt-get update -q </dev/null || return 1
	# shellcheck disable=SC2086 # a list of names
	$as_root env DEBIAN_FRONTEND=noninteractive \
		apt-get install -y -q --no-install-recommends $missing </dev/null
}

# judges installs what the lock file names, unless exactly that is installed.
judges() {
	if [ -f testdata/node_modules/.package-lock.json ] &&
		[ "$(cat testdata/node_modules/.from 2>/dev/null)" = "$(cksum <testdata/package-lock.json)" ]; then
		echo 'as locked'
		return
	fi
	(cd testdata && npm ci --no-progress </dev/null) || return 1
	cksum <testdata/package-lock.json >testdata/node_modules/.from
}

# tree prints what git sees of the working tree; nothing outside a checkout.
tree() {
	if command -v git >/dev/null 2>&1 && [ -e .git ]; then
		git -c safe.directory='*' status --porcelain
	fi
}

formatted() {
	wrong=$(gofmt -l calculators generator themes)
	[ -z "$wrong" ] && return
	printf 'run gofmt -w on:\n%s\n' "$wrong"
	return 1
}

vetted() {
	go vet ./... && go vet -tags judges ./... && go vet ./testdata/mutations
}

# linted runs the linter with every file of the module. Its version, and that of the
# next, stand in tools.mod, apart from what the program is made of.
linted() {
	go tool -modfile=testdata/tools.mod staticcheck -tags judges ./...
}

# alive wants every function to be called by the program. The helpers of tests are
# packages of their own; Respond is called by the reactor, which is built for another
# system; Kinds is what tests of several packages go through.
alive() {
	unused=$(go tool -modfile=testdata/tools.mod deadcode ./...) || return 1
	unused=$(printf '%s\n' "$unused" | grep -v -e 'test/' -e 'func: Respond$' -e 'func: Kinds$') || return 0
	[ -z "$unused" ] && return
	printf 'nothing calls these:\n%s\n' "$unused"
	return 1
}

modules() {
	go mod verify && go mod tidy -diff
}

raced() {
	# The trial runs the built program and the house only reads files: neither
	# shares memory with what it tests.
	# shellcheck disable=SC2046 # a list of names
	go test -race -timeout 10m $(go list ./generator/... | grep -v -e /trial -e /house)
}

# fuzzed finds every fuzz target and tries five thousand inputs in each. They are
# counted, not timed: on a busy machine ten seconds may try next to nothing, and
# the go command sometimes takes the end of the time itself for a failure. Nor
# may it spend the time on making an input shorter that only reached a new line.
fuzzed() {
	list=$(go test -run '^$' -list '^Fuzz' ./...) || return 1
	targets=$(printf '%s\n' "$list" | awk '
		/^Fuzz/ { names[++n] = $1 }
		/^ok/   { for (i = 1; i <= n; i++) print $2, names[i]; n = 0 }')
	[ -n "$targets" ] || stop 'no fuzz target was found'
	printf '%s\n' "$targets" | while read -r package target; do
		echo "-- $target in $package"
		said=$(go test -run '^$' -fuzz "^$target\$" -fuzztime 5000x -fuzzminimizetime 50x "$package" 2>&1 </dev/null) && failed=0 || failed=1
		printf '%s\n' "$said" | grep -v '^fuzz: elapsed: [0-9]*s.*/sec' || :
		[ "$failed" -eq 0 ] || exit 1
		printf '%s\n' "$said" | grep -q 'execs: 5[0-9][0-9][0-9] ' || stop "$target was not tried five thousand times"
	done
}

unchanged() {
	now=$(tree)
	[ "$now" = "$before" ] && return
	printf 'the tests changed the working tree. Before:\n%s\nNow:\n%s\n' "$before" "$now"
	return 1
}

prepare
before=$(tree)
step 'tools of the system' tools
step 'judges from npm' judges
step 'gofmt' formatted
step 'go vet, with and without judges' vetted
step 'staticcheck' linted
step 'deadcode' alive
step 'go mod verify, go mod tidy' modules
step 'go build' go build ./...
step 'tsc: the scripts of the theme' testdata/node_modules/.bin/tsc --noEmit -p themes/studio/scripts
step 'tsc: its service worker' testdata/node_modules/.bin/tsc --noEmit -p themes/studio/scripts/tsconfig.worker.json
step 'go test, all of it with its judges' go test -tags judges -timeout 36m ./...
step 'go test -race, the generator' raced
step 'go test -fuzz, each target 5,000 times' fuzzed
step 'the working tree is as it was' unchanged

say 'Everything holds.'
printf '%s%5d s  in all\n' "$steps" "$(($(date +%s) - started))"
