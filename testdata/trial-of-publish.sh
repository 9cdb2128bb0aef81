#!/bin/sh
# The long trial of publishing: runs killed at random moments, ended by signals,
# and folders that are mounted. Prints counts; ends with 1 when something was
# lost. The short form is part of go test.
#
#     sh testdata/trial-of-publish.sh [KILLS [SIGNALS]]
set -eu

cd "$(dirname "$0")/.."
kills=${1:-200}
signals=${2:-40}

# run prints a test's counts and fails when it does.
run() {
	said=$(go test "$@" -count 1 -v -timeout 60m 2>&1) && failed=0 || failed=1
	printf '%s\n' "$said" | grep -v '^=== ' || :
	return "$failed"
}

echo "== $kills kills of each way to publish"
run ./generator/shelf -run 'TestTrial|TestReadersMissNothing|TestTwoAtOnce|TestAWriterInTheFolder' -kills "$kills"
echo "== $signals publishes sent each signal"
run ./generator -run TestSignals -signals "$signals"

if [ "$(id -u)" -ne 0 ] || ! unshare -m true 2>/dev/null; then
	echo '== mounted folders: NOT TRIED, only root may mount'
	exit 0
fi
echo '== mounted folders'
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
go build -o "$work/slipbook" ./generator
unshare -m sh -eu -s "$work" <<'EOF'
work=$1
fail() {
	echo "FAILED: $*" >&2
	exit 1
}
cp -R content "$work/content"
publish() { "$work/slipbook" publish --content "$work/content" --to "$1"; }
publish "$work/site"
mkdir "$work/volume" "$work/disk"
mount --bind "$work/site" "$work/volume"
before=$(find "$work/volume" -type f | wc -l)
printf '\nOne more line.\n' >>"$work/content/home.md"
publish "$work/site"
[ "$(find "$work/volume" -type f | wc -l)" -eq "$before" ] || fail 'a volume lost files'
grep -q 'One more line' "$work/volume/index.html" || fail 'a volume shows the old edition'
printf '\nTwo more lines.\n' >>"$work/content/home.md"
publish "$work/volume"
grep -q 'Two more lines' "$work/site/index.html" || fail 'a mounted folder shows the old edition'
mount -t tmpfs -o size=3m none "$work/disk"
if publish "$work/disk"; then fail 'a full disk was not noticed'; fi
[ -z "$(ls -A "$work/disk")" ] || fail 'a full disk is left with litter'
mount -o remount,size=60m "$work/disk"
publish "$work/disk"
mount -o remount,ro "$work/disk"
printf '\nThree more lines.\n' >>"$work/content/home.md"
if publish "$work/disk"; then fail 'a disk that cannot be written was not noticed'; fi
EOF
echo '== nothing was lost'
