#!/usr/bin/env bash
# Writes the designs again with the command `flip` (its path is the only argument) and refits them in R.
# Needed whenever a model's rows or terms change; then look at the difference before committing it.
set -euo pipefail
flip=$1
cd "$(dirname "${BASH_SOURCE[0]}")"
fit() { dotnet "$flip" fit --log "$1" --as-of 2026-03-31 --model "$2" "${@:4}" --design "$3.csv" > /dev/null; }
for model in price hours supplies; do
    fit log "$model" "$model" --plain
    fit log "$model" "$model-ols" --estimator ols
done
fit log days days-episodes --plain
uncut=$(mktemp -d)
cp log/* "$uncut"
rm "$uncut/asking.csv"
fit "$uncut" days days --plain
rm -r "$uncut"
Rscript refit.R
