#!/usr/bin/env bash
# How a packet's time grows: tests/benchmark/packet_growth.sh [BUILD]
# A rack of ladders, each two posts with rungs mortised in: once with more kinds of ladder, once with more copies of the
# rungs. Target: 200 parts of 40 kinds in less than 8 s; time grows with kinds, not with copies.
set -euo pipefail
cd "$(dirname "$0")/../.."
program=${1:-build}/bin/rodwright
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT

# design LADDERS RUNGS: every ladder is a little wider than the last, so that its rungs, and its posts, are a kind each.
design() {
  awk -v ladders="$1" -v rungs="$2" 'BEGIN {
    print "piece \"Ladders\" {\n    unit mm\n    tall = 2000mm; wide = 40000mm; deep = 200mm\n    wood ash = white_ash quartered"
    for (i = 1; i <= ladders; ++i) {
      printf "    part post%d[2] of ash {\n        grain tall\n        deep = %dmm; wide = 40mm; bottom = piece.bottom; tall = 2000mm\n        front = piece.front\n    }\n", i, 60 + i
      printf "    post%d[1].left = piece.left + %dmm\n    post%d[2].left = post%d[1].right + %dmm\n", i, 900 * (i - 1), i, i, 300 + 10 * i
      printf "    part rung%d[%d] of ash {\n        grain wide\n        left = post%d[1].right; right = post%d[2].left\n        front = piece.front + 10mm; deep = 20mm; tall = 40mm\n    }\n", i, rungs, i, i
      printf "    space rung%d along tall from piece.bottom to piece.top {\n        ends = gap\n    }\n", i
      printf "    join rung%d.left to post%d[1].right with mortise_and_tenon\n    join rung%d.right to post%d[2].left with mortise_and_tenon\n", i, i, i, i
    }
    print "}"
  }'
}

seconds() {
  local start=$EPOCHREALTIME
  "$program" build "$out/ladders.rod" --only packet --out "$out/packet" > /dev/null
  awk -v a="$start" -v b="$EPOCHREALTIME" 'BEGIN { printf "%.2f", b - a }'
}

printf '%8s %8s %10s\n' kinds parts seconds
for shape in "5 8" "10 8" "20 8" "5 38"; do
  read -r ladders rungs <<< "$shape"
  design "$ladders" "$rungs" > "$out/ladders.rod"
  printf '%8d %8d %10s\n' $((2 * ladders)) $((ladders * (rungs + 2))) "$(seconds)"
done
