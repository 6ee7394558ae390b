"""Writes co2.csv: the weekly carbon dioxide series that the package statsmodels ships, one week as 5 ms.

Run with Debian's python3-statsmodels (0.13.5) installed:  python3 export.py > co2.csv
"""
import csv
import datetime
import os

import statsmodels

HEAD = """# Weekly atmospheric carbon dioxide, 1958 to 2001: data set 'co2' of the Python package statsmodels 0.13.5,
# marked public domain there; package from Debian (python3-statsmodels), exported by export.py beside this file.
# One week of the data is written as 5 ms, so that the yearly cycle lies where a slow shaft would: 365.2425 days
# are 260.887 ms, 3.83307 Hz. Weeks without a value are left out.
time_ms,co2"""

folder = os.path.join(os.path.dirname(statsmodels.__file__), "datasets", "co2")
with open(os.path.join(folder, "co2.csv")) as file:
    rows = list(csv.reader(file))[1:]
first = datetime.date(1958, 3, 29)
print(HEAD)
for day, value in rows:
    if value:
        date = datetime.date(int(day[:4]), int(day[4:6]), int(day[6:]))
        print(f"{(date - first).days / 7 * 5:.6g},{value}")
