# Brings what specc needs: a virtual environment in .venv with the dependencies of pyproject.toml, and the
# libraries of the system that WeasyPrint draws text with. Sourced by examples/run and tests/run; changes nothing
# when everything is there already. Needs bash 3.2 or newer.

root="$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd -P)"
environment="$root/.venv"
unset PYTHONPATH PYTHONHOME

stop() {
    printf '%s\n' "$@" >&2
    exit 1
}

# Prints the first Python on the path that is 3.11 or newer and able to make virtual environments.
find_python() {
    local name
    for name in python3 python3.14 python3.13 python3.12 python3.11; do
        if "$name" -c 'import ensurepip, sys, venv; sys.exit(sys.version_info < (3, 11))' 2> /dev/null; then
            echo "$name"
            return
        fi
    done
    return 1
}

make_environment() {
    "$environment/bin/python" -c 'import pip' 2> /dev/null && return
    local python
    python="$(find_python)" || stop \
        "specc needs Python 3.11 or newer with its venv module, and none was found on the path." \
        "  Debian, Ubuntu:  apt-get install python3 python3-venv" \
        "  Fedora:          dnf install python3" \
        "  macOS:           brew install python"
    echo "making the virtual environment .venv with $("$python" --version)"
    "$python" -m venv --clear "$environment"
}

# Installs specc with the extra "$1" (may be empty) unless that was done for this pyproject.toml, in this folder.
install_specc() {
    local extra="$1" stamp="$environment/installed${1:+-$1}" wanted
    wanted="$root $(cksum < "$root/pyproject.toml")"
    [ "$(cat "$stamp" 2> /dev/null)" = "$wanted" ] && return
    echo "installing specc${extra:+ with what its tests need}"
    "$environment/bin/python" -m pip install --quiet --disable-pip-version-check --editable "$root${extra:+[$extra]}"
    printf '%s' "$wanted" > "$stamp"
}

# WeasyPrint loads these when it is imported and warns when the subsetting library, which keeps the bytes of a
# PDF the same on every machine, is missing.
weasyprint_loads() {
    "$environment/bin/python" -W "error:HarfBuzz-Subset" -c "import weasyprint" > /dev/null 2>&1
}

install_libraries() {
    weasyprint_loads && return
    local packages="libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz0b libharfbuzz-subset0"
    if command -v apt-get > /dev/null && [ "$(id -u)" = 0 ]; then
        echo "installing $packages"
        export DEBIAN_FRONTEND=noninteractive
        # shellcheck disable=SC2086 # one word a package
        apt-get install -qq -y --no-install-recommends $packages > /dev/null 2>&1 \
            || { apt-get update -qq && apt-get install -qq -y --no-install-recommends $packages > /dev/null; }
        weasyprint_loads && return
    fi
    "$environment/bin/python" -W "error:HarfBuzz-Subset" -c "import weasyprint" || true
    stop "WeasyPrint, which makes the PDF, needs Pango and HarfBuzz from the system. Install them and run this again:" \
        "  Debian, Ubuntu:  sudo apt-get install $packages" \
        "  Fedora:          sudo dnf install pango harfbuzz" \
        "  macOS:           brew install pango" \
        "                   export DYLD_FALLBACK_LIBRARY_PATH=\"\$(brew --prefix)/lib\""
}

# Makes sure of everything; "$1" is an extra of pyproject.toml, or nothing.
set_up() {
    make_environment
    install_specc "${1:-}"
    install_libraries
}
