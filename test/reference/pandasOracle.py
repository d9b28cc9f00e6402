"""Columns of small fixtures as pandas reads them, as one JSON object: for each file and column the number of values,
their minimum, maximum and sum, and the first and the last of them.

Run:   /usr/bin/python3 test/reference/pandasOracle.py fixtures > test/reference/values/pandas.json
With the word "drives" instead it reads the sample drives, which change with the simulation and are not stored.
Made with pandas 1.5.3 (Debian 12: python3-pandas). Numbers are read with float_precision="round_trip". The test runs it
again where pandas is installed and compares; where it is not, the stored file stands in.
"""

import json
import sys

import pandas as pd

FIXTURES = {
    "test/fixtures/layouts/wideText/commas.csv": {"skiprows": 1},
    "test/fixtures/layouts/wideText/decimal-commas.txt": {
        "sep": ";",
        "decimal": ",",
        "skiprows": [1],
        "encoding": "cp1252",
    },
    "test/fixtures/layouts/wideText/polled.csv": {"na_values": ["--"]},
    "test/fixtures/layouts/wideText/utf16-tabs.tsv": {"sep": "\t", "encoding": "utf-16"},
}
DRIVES = {
    "assets/drives/road-drive.csv": {},
    "assets/drives/van-before.csv": {"skiprows": [1]},
    "assets/drives/analogue-hold.csv": {"sep": ";", "skiprows": 1},
    "assets/drives/van-trap.tsv": {"sep": "\t"},
}

found = {}
for name, options in (FIXTURES if sys.argv[1] == "fixtures" else DRIVES).items():
    precision = {} if options.get("decimal") == "," else {"float_precision": "round_trip"}
    table = pd.read_csv(name, **options, **precision)
    columns = []
    for column in table.columns:
        values = pd.to_numeric(table[column], errors="coerce").dropna()
        if len(values) == 0:
            continue
        columns.append(
            {
                "heading": str(column),
                "count": int(len(values)),
                "min": float(values.min()),
                "max": float(values.max()),
                "sum": float(values.sum()),
                "first": float(values.iloc[0]),
                "last": float(values.iloc[-1]),
            }
        )
    found[name] = {"rows": int(len(table)), "columns": columns}

print(json.dumps(found, indent=1, ensure_ascii=False))
