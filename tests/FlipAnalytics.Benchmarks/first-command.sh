#!/usr/bin/env bash
# How long the README's first command takes on a computer that has nothing but the SDK: a fresh clone, no package, nothing built.
#
#     tests/FlipAnalytics.Benchmarks/first-command.sh [COMMIT ...]
#
# For each commit (the one checked out where none is named): wall time, processor time, packages fetched, and the first line of
# the answer. Several commits are measured one after the other; name a commit twice to see how far two runs differ.
set -euo pipefail
repository=$(git -C "$(dirname "${BASH_SOURCE[0]}")" rev-parse --show-toplevel)
[ $# -gt 0 ] || set -- HEAD

folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
printf '%-12s %8s %10s %9s  %s\n' commit seconds processor packages answer
for commit in "$@"; do
    rm -rf "$folder/clone" "$folder/home" "$folder/packages"
    git clone --quiet "$repository" "$folder/clone"
    git -C "$folder/clone" checkout --quiet "$(git -C "$repository" rev-parse "$commit")"
    mkdir "$folder/home" "$folder/packages"
    # Settings of where packages come from are the computer's, not a cache.
    [ ! -d "$HOME/.nuget/NuGet" ] || { mkdir -p "$folder/home/.nuget" && cp -r "$HOME/.nuget/NuGet" "$folder/home/.nuget/"; }
    command=$(grep -m 1 '^    dotnet run ' "$folder/clone/README.md")
    cd "$folder/clone"
    TIMEFORMAT='%R %U %S'
    # Every server of the build is new and ends with it.
    spent=$( { time env HOME="$folder/home" NUGET_PACKAGES="$folder/packages" DOTNET_CLI_HOME="$folder/home" \
        DOTNET_NOLOGO=1 DOTNET_SKIP_FIRST_TIME_EXPERIENCE=1 DOTNET_CLI_TELEMETRY_OPTOUT=1 MSBUILDDISABLENODEREUSE=1 \
        UseSharedCompilation=false bash -c "$command" > "$folder/answer" 2> "$folder/errors"; } 2>&1 )
    read -r wall user system <<< "$spent"
    size=$(du -sm "$folder/packages" | cut -f1)
    printf '%-12s %8.0f %10.0f %6s MB  %s\n' "$(git rev-parse --short HEAD)" "$wall" "$(echo "$user + $system" | bc -l)" "$size" "$(head -1 "$folder/answer")"
    cd "$repository"
done
