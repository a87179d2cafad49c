const pairsOf = (text: string) => ({ values: Float64Array.from(text.trim().split(/[\s,]+/), Number), width: 2 });

/** E. H. Ruspini, "Numerical methods for fuzzy clustering", Inform. Sci. 2, 1970: 75 points in four groups, as R's cluster has them. */
export const ruspini = pairsOf(`
4 53
5 63
10 59
9 77
13 49
13 69
12 88
15 75
18 61
19 65
22 74
27 72
28 76
24 58
27 55
28 60
30 52
31 60
32 61
36 72
28 147
32 149
35 153
33 154
38 151
41 150
38 145
38 143
32 143
34 141
44 156
44 149
44 143
46 142
47 149
49 152
50 142
53 144
52 152
55 155
54 124
60 136
63 139
86 132
85 115
85 96
78 94
74 96
97 122
98 116
98 124
99 119
99 128
101 115
108 111
110 111
108 116
111 126
115 117
117 115
70 4
77 12
83 21
61 15
69 15
78 16
66 18
58 13
64 20
69 21
66 23
61 25
76 27
72 31
64 30
`);

/** L. Kaufman, P. J. Rousseeuw, "Finding Groups in Data", 1990, as R's cluster has it: GNP a head and % in farming, 12 countries, 1993. */
export const agriculture = pairsOf(
  '16.8 2.7 21.3 5.7 18.7 3.5 5.9 22.2 11.4 10.9 17.8 6 10.9 14 16.6 8.5 21 3.5 16.4 4.3 7.8 17.4 14 2.3',
);

/** Struyf, Hubert, Rousseeuw, "Clustering in an object-oriented environment", J. Stat. Softw. 1(4), 1996: 18 flowers; V1–V4 words, the rest numbers or ranks. */
export const flower = {
  words: [
    [1, 2, 1, 1, 1, 1, 1, 1, 2, 2, 2, 2, 2, 2, 2, 2, 2, 1],
    [2, 1, 2, 1, 2, 2, 1, 1, 2, 2, 2, 2, 2, 2, 1, 1, 1, 1],
    [2, 1, 1, 2, 1, 1, 1, 2, 1, 1, 2, 2, 1, 2, 1, 1, 1, 2],
    [4, 2, 3, 4, 5, 4, 4, 2, 3, 5, 5, 1, 1, 4, 3, 4, 2, 2],
  ],
  numbers: [
    [3, 1, 3, 2, 2, 3, 3, 2, 1, 2, 3, 2, 2, 2, 2, 2, 2, 1],
    [15, 3, 1, 16, 2, 12, 13, 7, 4, 14, 8, 9, 6, 11, 10, 18, 17, 5],
    [25, 150, 150, 125, 20, 50, 40, 100, 25, 100, 45, 90, 20, 80, 40, 200, 150, 25],
    [15, 50, 50, 50, 15, 40, 20, 15, 15, 60, 10, 25, 10, 30, 20, 60, 60, 10],
  ],
};
