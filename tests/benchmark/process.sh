#!/usr/bin/env bash
# What a run of the program costs beyond its work: tests/benchmark/process.sh [BUILD]
# Medians in milliseconds, each pair of commands taken in turns so that both see the same machine. Targets:
#   rodwright --version                  at most 25 ms over /bin/true
#   build --only cutlist, Keeper's table at most 3 x --version + 30 ms, where no rack asks for a cutting plan
#   the same with its rack              (no target; the plan is what it takes longer)
#   check, all that it tries            under 700 ms
#   build, all backends, cold            under 1.5 s (the first run; the median of the rest beside it)
# Exits with 1 if one is missed.
set -euo pipefail
cd "$(dirname "$0")/../.."
program=${1:-build}/bin/rodwright
design=examples/keepers_table/keepers_table.rod
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
cp "$design" "$out/no_rack.rod"

ms() {  # runs a command, prints how long it took
  local start=$EPOCHREALTIME
  "$@" > /dev/null 2>&1
  local end=$EPOCHREALTIME
  awk -v a="$start" -v b="$end" 'BEGIN { printf "%.2f\n", (b - a) * 1000 }'
}

median() { sort -n | awk '{ v[NR] = $1 } END { print v[int((NR + 1) / 2)] }'; }

cold=$(ms "$program" build "$design" --out "$out/all")
for _ in $(seq 21); do
  ms /bin/true >> "$out/true"
  ms "$program" --version >> "$out/version"
  ms "$program" build "$out/no_rack.rod" --only cutlist --out "$out/cutlist" >> "$out/build"
done
for _ in $(seq 5); do ms "$program" build "$design" --only cutlist --out "$out/cutlist" >> "$out/planned"; done
for _ in $(seq 5); do ms "$program" check "$design" >> "$out/check"; done
for _ in $(seq 5); do ms "$program" build "$design" --out "$out/all" >> "$out/whole"; done

awk -v none="$(median < "$out/true")" -v version="$(median < "$out/version")" -v build="$(median < "$out/build")" \
  -v planned="$(median < "$out/planned")" -v check="$(median < "$out/check")" \
  -v whole="$(median < "$out/whole")" -v cold="$cold" 'BEGIN {
  printf "/bin/true                 %8.1f ms\n", none
  printf "--version                 %8.1f ms   %.1f ms over /bin/true, at most 25\n", version, version - none
  printf "build --only cutlist      %8.1f ms   %.2f x --version, at most %.1f ms\n", build, build / version, 3 * version + 30
  printf "the same with its rack    %8.1f ms\n", planned
  printf "check                     %8.1f ms   at most 700\n", check
  printf "build, first run          %8.1f ms   at most 1500\n", cold
  printf "build, median             %8.1f ms\n", whole
  exit !(version - none <= 25 && build <= 3 * version + 30 && cold < 1500 && check < 700)
}'
