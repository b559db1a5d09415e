#!/usr/bin/env bash
# How a packet's time grows: tests/benchmark/packet_growth.sh [BUILD]
# Ladders, each two posts with rungs mortised in, with more kinds of ladder and with more rungs (and so more mortises in
# each post); and loose boards, with more kinds and with more copies. Target: 200 parts of 40 kinds in less than 8 s; time
# grows with kinds, not with copies.
set -euo pipefail
cd "$(dirname "$0")/../.."
program=${1:-build}/bin/rodwright
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT

# ladders LADDERS RUNGS: every ladder is a little wider than the last, so that its rungs, and its posts, are a kind each.
ladders() {
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

boards() {  # KINDS COPIES: nothing but parts, each kind a row from floor to top
  awk -v kinds="$1" -v copies="$2" 'BEGIN {
    print "piece \"Boards\" {\n    unit mm\n    tall = 2000mm; wide = 1200mm; deep = 4200mm\n    wood ash = white_ash quartered"
    for (i = 1; i <= kinds; ++i) {
      printf "    part board%d[%d] of ash {\n        grain wide\n        left = piece.left; wide = %dmm\n", i, copies, 600 + 10 * i
      printf "        front = piece.front + %dmm; deep = 20mm; tall = 8mm\n    }\n", 100 * i
      printf "    space board%d along tall from piece.bottom to piece.top {\n        ends = gap\n    }\n", i
    }
    print "}"
  }'
}

seconds() {
  local start=$EPOCHREALTIME
  "$program" build "$out/design.rod" --only packet --out "$out/packet" > /dev/null
  awk -v a="$start" -v b="$EPOCHREALTIME" 'BEGIN { printf "%.2f", b - a }'
}

printf '%-8s %8s %8s %10s\n' what kinds parts seconds
for shape in "5 8" "10 8" "20 8" "5 38"; do
  read -r count rungs <<< "$shape"
  ladders "$count" "$rungs" > "$out/design.rod"
  printf '%-8s %8d %8d %10s\n' ladders $((2 * count)) $((count * (rungs + 2))) "$(seconds)"
done
for shape in "10 5" "10 20" "40 5"; do
  read -r kinds copies <<< "$shape"
  boards "$kinds" "$copies" > "$out/design.rod"
  printf '%-8s %8d %8d %10s\n' boards "$kinds" $((kinds * copies)) "$(seconds)"
done
