#!/bin/sh
# Checks the shelters of a repository and reviews a change of them. For any continuous-integration server, and
# for a server-side hook: it needs git, Node 20 or newer and `tautline`, and works in a bare repository.
#
#   check.sh HEAD [BASE]
#
# HEAD is the revision to check. With BASE, a review of what HEAD changed since the two parted is written, too.
#
# Settings, from the environment:
#   TAUTLINE          how to call it (default: tautline)
#   TAUTLINE_OUT      folder for the reports (default: tautline-reports)
#   TAUTLINE_FAIL_ON  error or warning (default: error)
#   TAUTLINE_SHARD    a part of the files, such as 2/5
#   TAUTLINE_ON       day that ages are counted to (default: today)
#
# Written into the folder: junit.xml, shelters.sarif, annotations.txt (workflow commands that put findings beside
# their lines, for a forge that reads them from the log) and, with BASE, review.md and review.html. Its name has
# no comma.
# Exit code: 0 nothing failed, 1 something failed or got worse, 2 it could not run.
set -eu

head=${1:?say the revision to check}
base=${2:-}
tautline=${TAUTLINE:-tautline}
out=${TAUTLINE_OUT:-tautline-reports}
level=${TAUTLINE_FAIL_ON:-error}
on=${TAUTLINE_ON:-$(date +%F)}

mkdir -p "$out"
out=$(cd "$out" && pwd)
repository=$(pwd)
texts=$(mktemp -d)
trap 'rm -rf "$texts"' EXIT
trap 'exit 2' HUP INT TERM

# The files of the revision, without a working tree.
git rev-parse --verify --quiet "$head^{commit}" > /dev/null || { echo "There is no revision '$head'." >&2; exit 2; }
git archive --format=tar "$head" | tar -xf - -C "$texts"

worst=0
# Keeps the worst exit code of what is called; 2 and beyond mean that it could not run.
note() {
  if "$@"; then :; else
    code=$?
    if [ "$code" -gt "$worst" ]; then worst=$code; fi
  fi
}

# Split at spaces on purpose: TAUTLINE may be `node path/to/tautline.mjs`.
checked() {
  # shellcheck disable=SC2086
  (cd "$texts" && $tautline check . --on "$on" --fail-on "$level" ${TAUTLINE_SHARD:+--shard "$TAUTLINE_SHARD"} \
    --format github --reports "junit=$out/junit.xml,sarif=$out/shelters.sarif") > "$out/annotations.txt"
}
reviewed() {
  # shellcheck disable=SC2086
  $tautline review "$base...$head" --repository "$repository" --on "$on" --fail-on "$level" \
    --out "$out/review.md" --reports "html=$out/review.html"
}

note checked
if [ -n "$base" ]; then note reviewed; fi
exit "$worst"
