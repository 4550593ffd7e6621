#!/bin/sh
# Installs the workbench that the editor tests drive, into test/editor/.workbench (ignored by git).
# Idempotent: a finished install leaves a mark and the next run does nothing.
# Needs Node 20 on PATH (the workbench's native modules are built for the Node that runs it), Debian's
# package tool for the headers and the browser, and about 700 MB.
set -eu
cd "$(dirname "$0")"

version=4.100.3 # carries the editor 1.100, the one that engines.vscode of the extension names
mark=".workbench/installed-$version-$(node -p 'process.versions.modules')"
if [ -f "$mark" ]; then
  exit 0
fi

need=""
for package in libkrb5-dev libx11-dev libxkbfile-dev libsecret-1-dev chromium build-essential python3; do
  dpkg -s "$package" >/dev/null 2>&1 || need="$need $package"
done
if [ -n "$need" ]; then
  sudo=""
  [ "$(id -u)" = 0 ] || sudo=sudo
  $sudo apt-get update
  # shellcheck disable=SC2086 # a list of packages, split on purpose
  $sudo env DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends $need
fi

npm install --ignore-scripts --no-audit --no-fund --no-package-lock

mkdir -p .workbench
cd .workbench
[ -f package.json ] || echo '{ "name": "workbench", "private": true }' >package.json
npm install --ignore-scripts --no-audit --no-fund --no-package-lock "code-server@$version"
npm rebuild argon2
(
  cd node_modules/code-server/lib/vscode
  npm install --omit=dev --ignore-scripts --no-audit --no-fund --no-package-lock
  ln -sfn node_modules node_modules.asar
  # One by one: a module that does not build (node-pty) must not stop the others.
  for module in @vscode/spdlog @parcel/watcher native-watchdog kerberos; do
    npm rebuild "$module"
  done
)
cd ..
touch "$mark"
