# What examples/run and tests/run share: the Debian packages they need, and how a step is run and timed.
# To be sourced by bash.

build_packages=(
  g++ cmake ninja-build ccache
  tao-pegtl-dev libfmt-dev libyaml-cpp-dev libhpdf-dev libgeos-dev libgmp-dev libboost-graph-dev libeigen3-dev
  libcli11-dev nlohmann-json3-dev doctest-dev libbenchmark-dev libglpk-dev fonts-dejavu-core
  libocct-modeling-algorithms-dev libocct-modeling-data-dev libocct-data-exchange-dev libocct-visualization-dev
)
test_packages=(qpdf poppler-utils clang clang-format libclang-rt-14-dev calculix-ccx)

# step TEXT COMMAND...: says what is done, does it, says how long it took; stops the script if it fails.
step() {
  local text=$1 start=$SECONDS
  shift
  printf '\n== %s\n' "$text"
  if ! "$@"; then
    printf '== FAILED after %d s: %s\n' $((SECONDS - start)) "$text" >&2
    exit 1
  fi
  printf '== done in %d s: %s\n' $((SECONDS - start)) "$text"
}

as_root() {
  if [ "$(id -u)" -eq 0 ]; then "$@"; else sudo "$@"; fi
}

# install_packages NAME...: installs those that are missing, and asks nobody for anything if none is.
install_packages() {
  local missing=() name
  for name in "$@"; do
    [ "$(dpkg-query -W -f='${db:Status-Status}' "$name" 2>/dev/null)" = installed ] || missing+=("$name")
  done
  if [ ${#missing[@]} -eq 0 ]; then
    echo "all $# packages are there"
    return
  fi
  echo "installing: ${missing[*]}"
  as_root apt-get update -qq &&
    as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${missing[@]}"
}
