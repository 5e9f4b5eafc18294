#!/bin/sh
# sources.sh FOLDER: the sources of the libraries that the engine holds, as this Debian has them, unpacked into FOLDER
# unless they lie there. It brings a list of places of its own: nothing of the system is changed.
set -eu
mkdir -p "$1"
cd "$1"
for library in libyaml libxml2 libxslt cjson; do
    if ! ls -d "$library"-*/ >/dev/null 2>&1; then lacking="${lacking-} $library"; fi
done
[ -n "${lacking-}" ] || exit 0
command -v apt-get >/dev/null && command -v dpkg-source >/dev/null || {
    echo "apt-get and dpkg-source (package dpkg-dev) fetch the sources of$lacking; they are not here" >&2
    exit 1
}
. /etc/os-release
mkdir -p .apt/lists/partial .apt/parts .apt/cache
cat >.apt/parts/source.sources <<END
Types: deb-src
URIs: http://deb.debian.org/debian
Suites: $VERSION_CODENAME $VERSION_CODENAME-updates
Components: main
Signed-By: /usr/share/keyrings/debian-archive-keyring.gpg

Types: deb-src
URIs: http://deb.debian.org/debian-security
Suites: $VERSION_CODENAME-security
Components: main
Signed-By: /usr/share/keyrings/debian-archive-keyring.gpg
END
cat >.apt/apt.conf <<END
Dir::Etc::SourceList "/dev/null";
Dir::Etc::SourceParts "$PWD/.apt/parts";
Dir::State::Lists "$PWD/.apt/lists";
Dir::Cache "$PWD/.apt/cache";
APT::Sandbox::User "";
END
export APT_CONFIG="$PWD/.apt/apt.conf"
apt-get -qq update
# shellcheck disable=SC2086 # words they are
apt-get -qq source --only-source $lacking >.apt/log 2>&1 || { cat .apt/log >&2; exit 1; }
rm -rf .apt ./*.dsc ./*.tar.*
