#!/usr/bin/env bash
# `package_check.sh FILE.deb`: the package installed, its entries checked by the desktop's own tools, the program
# started from where it lies. As root it is installed for real and taken off again, unless one is there already; else
# it is unpacked beside.
set -eu
package=$1
desk=$(mktemp -d)
installed=
finish() {
    [ -z "$installed" ] || dpkg -r lanternleaf > /dev/null
    rm -rf "$desk"
}
trap finish EXIT
if [ "$(id -u)" -eq 0 ] && ! dpkg-query -W lanternleaf > /dev/null 2>&1; then
    dpkg -i "$package" > /dev/null
    installed=yes
    root=
else
    dpkg-deb -x "$package" "$desk"
    ln -sfn /usr/share/fonts "$desk/usr/share/fonts"
    root=$desk
fi
program=$root/usr/bin/lanternleaf
share=$root/usr/share
desktop-file-validate "$share/applications/lanternleaf.desktop"
# The project owns no domain to name the component by; that is the one thing let pass.
appstreamcli validate --no-net --no-color --override=cid-desktopapp-is-not-rdns=info "$share/metainfo/lanternleaf.metainfo.xml"
test -s "$share/icons/hicolor/scalable/apps/lanternleaf.svg"
test -s "$share/doc/lanternleaf/copyright"
# From another folder and with nothing of the source tree in sight, it finds its parts, cards and faces.
cd "$desk"
"$program" check "$share/lanternleaf/cards/harbour-lighthouse.card.json"
"$program" shot "$share/lanternleaf/cards/night-tram.card.json" --screen shelf --size 1180x820 --out "$desk/shelf.png"
head -c 8 "$desk/shelf.png" | od -An -tx1 | grep -q '89 50 4e 47 0d 0a 1a 0a'
# The window: opened on a card as the file type's handler opens it, alive after two seconds.
HOME=$desk SDL_VIDEODRIVER=dummy "$program" --library "$desk/library" \
    "$share/lanternleaf/cards/window-candle.card.json" > "$desk/window.log" 2>&1 &
window=$!
sleep 2
kill -0 "$window" || { cat "$desk/window.log"; exit 1; }
kill "$window"
wait "$window" || true
echo "Installed, checked, started${installed:+, taken off again}: $(basename "$package")"
