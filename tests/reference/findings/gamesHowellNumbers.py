# Games and Howell's p values of random studies, one JSON array per study and line: python3 gamesHowellNumbers.py studies.csv
# scipy 1.17: the studentized range as an integral. R's ptukey differs from it by up to 1e-3 of the value at two or three degrees of freedom.
import csv
import itertools
import json
import sys

import numpy as np
from scipy.stats import studentized_range

studies = {}
for row in csv.DictReader(open(sys.argv[1])):
    studies.setdefault(row["set"], {}).setdefault(row["group"], []).append(float(row["strength"]))
for groups in studies.values():
    found = []
    for a, b in itertools.combinations(groups.values(), 2):
        va, vb = np.var(a, ddof=1) / len(a), np.var(b, ddof=1) / len(b)
        if va + vb == 0:
            found.append(None)
            continue
        df = (va + vb) ** 2 / (va**2 / (len(a) - 1) + vb**2 / (len(b) - 1))
        q = abs(np.mean(a) - np.mean(b)) / np.sqrt((va + vb) / 2)
        found.append(float(studentized_range.sf(q, len(groups), df)))
    print(json.dumps(found))
