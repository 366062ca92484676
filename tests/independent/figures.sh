#!/bin/sh
# Makes the figures again: sh tests/independent/figures.sh
set -e
here=$(dirname "$0")
make() {
  python3 "$here/canonical.py" "$1" | python3 "$here/measures.py" - --from "$2" --to "$3" --set "$4" > "$here/figures/$1.json"
  python3 "$here/canonical.py" "$1" | python3 "$here/more.py" - --from "$2" --to "$3" --set "$4" > "$here/more/$1.json"
}
make steady-fortnight 2026-01-12 2026-01-25 adult
make evening-exercise 2026-04-27 2026-05-10 adult
make autumn-clock-change 2025-10-20 2025-11-02 adult
make pregnancy 2026-02-02 2026-02-15 pregnancy-type-1
make thin-data 2026-06-26 2026-06-30 adult
make long-highs 2026-05-18 2026-05-31 older
make t1d-uom-2314 2023-11-07 2023-11-20 adult
make t1d-uom-2320 2023-12-13 2023-12-26 adult
make t1d-uom-2404 2024-03-25 2024-04-07 adult
noted() {
  python3 "$here/noted.py" "$1" --from "$2" --to "$3" --set "$4" > "$here/noted/$1.json"
}
noted evening-exercise 2026-04-13 2026-05-10 adult
noted pregnancy 2026-02-02 2026-02-15 pregnancy-type-1
noted steady-fortnight 2026-01-12 2026-01-25 adult
orders() {
  python3 "$here/orders.py" "$1" --from "$2" --to "$3" --set "$4" ${5:+--due "$5"} > "$here/orders/$1.json"
}
orders evening-exercise 2026-04-13 2026-05-10 adult
orders pregnancy 2026-02-02 2026-02-15 pregnancy-type-1 2026-06-17
orders steady-fortnight 2026-01-12 2026-01-25 adult
orders long-highs 2026-05-18 2026-05-31 older
changes() {
  python3 "$here/canonical.py" "$1" | python3 "$here/changes.py" - --from "$2" --to "$3" --set adult > "$here/changes/$1.json"
}
changes evening-exercise 2026-04-27 2026-05-10
changes t1d-uom-2314 2023-11-07 2023-11-20
changes t1d-uom-2404 2024-03-25 2024-04-07
meals() {
  python3 "$here/meals.py" "$1" --from "$2" --to "$3" --set "$4" > "$here/meals/$1.json"
}
meals evening-exercise 2026-04-13 2026-05-10 adult
meals pregnancy 2026-02-02 2026-02-15 pregnancy-type-1
meals steady-fortnight 2026-01-12 2026-01-25 adult
meals long-highs 2026-05-18 2026-05-31 older
