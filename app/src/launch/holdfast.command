#!/bin/sh
# For a double click on macOS: opens the viewport in a terminal's session.
here=$(cd -P "$(dirname "$0")" && pwd) || exit 3
[ $# -gt 0 ] || set -- view
exec "$here/holdfast" "$@"
