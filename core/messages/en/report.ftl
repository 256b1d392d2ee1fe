# Answers of the command line: the figures of a plan, and a bare street network.

## What can not be measured.

report-no-alternative = there is no alternative called `{ $name }`; there are: { $names }
report-no-phases = there is no phase { $id }; the plan has no phases
report-no-phase = there is no phase { $id }; there are: { $names }
report-no-figure = there is no figure `{ $id }`; there are: { $ids }
report-no-streets = no street to measure
report-bad-center = { $longitude }, { $latitude } is not a longitude and latitude to measure about (±180, ±89)
report-bad-tolerance = a tolerance of { $tolerance } m is not between 0 and { $most } m
report-bad-within = a walk of { $within } m is not more than 0 and at most { $most } m

## Behind the figures of a plan.

report-note = note: { $note }

## Columns of the table of a folder's plans; the figures stand between the alternative's table and the last three.

report-table-file = file
report-table-plan = plan
report-table-alternative = alternative
# The table of people at which the alternative was drawn.
report-table-people = table
report-table-unknown = can not be worked out
report-table-notes = notes
report-table-faults = faults

## A street network in words: a word of its own width first, then a sentence. Lengths come with their unit.

report-streets = { $dead_ends ->
    [one] Streets     { $length } of street in { $parts }: { $links } between { $nodes }, { $dead_ends } of them a dead end.
   *[other] Streets     { $length } of street in { $parts }: { $links } between { $nodes }, { $dead_ends } of them dead ends.
}
report-parts = { $count ->
    [one] { $number } connected part
   *[other] { $number } connected parts
}
report-links = { $count ->
    [one] { $number } link
   *[other] { $number } links
}
report-nodes = { $count ->
    [one] { $number } node
   *[other] { $number } nodes
}
report-connection = Connection  { $ratio } links to a node, every node counted; { $junctions } meeting of three or more links.
report-connection-none = Connection  no links to a node, every node counted; { $junctions } meeting of three or more links.
# Faces are the areas that streets enclose.
report-faces = Faces       { $count } enclosed; half are larger than { $area_ha } ha, half have more than { $perimeter } around them, the longest { $longest }.
report-density = Density     { $density } intersections per km² of the convex hull of the streets ({ $area_ha } ha).
report-busiest = Busiest     { $walks } of all shortest walks between nodes use the link of { $length } around { $east }, { $north }.
report-positions = Positions   are in meters east and north of longitude { $longitude }, latitude { $latitude }.

# id is the name of a point walks start from. Samples are points walked to.
report-origin = From { $id } ({ $offset } m beside the street): { $nodes } within reach.
report-origin-far = From { $id } ({ $offset } m beside the street): { $nodes } within reach, the farthest { $farthest } away.
report-origin-direct = From { $id } ({ $offset } m beside the street): { $nodes } within reach; walks to the samples are { $mean } times as long as the straight line.
report-origin-far-direct = From { $id } ({ $offset } m beside the street): { $nodes } within reach, the farthest { $farthest } away; walks to the samples are { $mean } times as long as the straight line.
report-nearest-origin = From the nearest of these origins
# Areas in hectares of one walk-shed, measured three ways. radius stands right-aligned.
report-shed = within { $radius } m  { $length } of street; areas by hull { $hull } ha, by 25 m buffer { $buffer } ha, by enclosed faces { $enclosed } ha.
report-shed-dwellings = within { $radius } m  { $length } of street, { $dwellings }; areas by hull { $hull } ha, by 25 m buffer { $buffer } ha, by enclosed faces { $enclosed } ha.
report-shed-dwellings-share = within { $radius } m  { $length } of street, { $dwellings } ({ $share } %); areas by hull { $hull } ha, by 25 m buffer { $buffer } ha, by enclosed faces { $enclosed } ha.
report-dwellings = { $count ->
    [one] { $number } dwelling
   *[other] { $number } dwellings
}

## Notes on what was drawn; most stand behind a feature of the file and a colon. x and y are as in the file.

report-too-many-nodes = more than { $most } nodes: betweenness is left out
report-line-too-short = is shorter than a millimeter, left out
report-line-too-far = { $x }, { $y } is more than 100 km away from the others, its line left out
report-line-no-degrees = { $x }, { $y } is no longitude and latitude within 100 km of the others, its line left out
report-point-too-far = { $x }, { $y } is more than 100 km away from the others, left out
report-point-no-degrees = { $x }, { $y } is no longitude and latitude within 100 km of the others, left out
# role, origin, sample, dwelling, dwellings, place, use and area_m2 are names in the file.
report-role-no-word = its role is not a word, left out
report-role-unknown = its role { $role } is not origin, sample, dwelling or place, left out
report-dwelling-uncounted = a dwelling without a whole number of dwellings, left out
report-place-without-use = a place without a use, left out
report-place-without-area = a place without an area_m2 of zero or more, left out
# from and to are positions as in the file; other is a feature of the file.
report-join-extended = the end at { $from } is joined to { $other }, extended to { $to }
report-join-trimmed = the end at { $from } is joined to { $other }, trimmed to { $to }
report-join-moved = the end at { $from } is joined to { $other }, moved to { $to }
