# What the study of an open plan says: why it can not work, what a drawing leaves open, and cautions.

study-fault = the figures can not be worked: { $faults }
study-no-figure = there is no figure `{ $id }`
study-no-factor = there is no factor `{ $id }`
study-news-unreadable = what was told of the plan can not be read
study-moment-unreadable = the marked moment can not be read

## What the drawing leaves open, in lists of notes and behind "note: " on the command line.

# Stands in parentheses behind a note, by itself or behind a place and a semicolon. A mark is anything drawn.
study-note-mark = mark { $mark }
# A use painted on a block that is not enclosed any more; it wakes when it is.
study-note-asleep = a use is asleep: no street goes all the way around it
study-note-outside-site = a use lies outside the site: nothing of it is counted; homes, jobs and shops out there can be drawn as outside context
study-note-closed-in = nobody can walk here: a barrier, or land that may not be walked across, lies between this place and every street
study-note-no-lot = a block to be built on holds no lot: no street its lots may front on reaches it, or it is too small; no homes, jobs or floor area are counted on it
study-note-no-boundary = no site boundary is drawn: the land that streets enclose and soft areas cover is counted as the site
# reason is measures-no-center or what is wrong with the network of walks.
study-note-no-walk = the walk to a center can not be worked out: { $reason }
study-note-rough-homes = rough homes of soft areas have no walk until streets are drawn there: shares of homes within a walk count them as out of reach

## Cautions: what lies where, and whom to ask there. Local codes and licensed practice decide, never this program.
## "here" is the place the caution is shown at.

study-caution-dead-ends = { $count ->
    [one] a dead end is longer than 150 ft (46 m): ask the fire marshal where an engine turns around
   *[other] { $count } dead ends, the longest here, are longer than 150 ft (46 m): ask the fire marshal where an engine turns around
}
# homes is more than most, which is 30.
study-caution-one-way = one way alone leads to { $homes } homes, more than { $most }: ask the fire marshal whether they need a second
study-caution-block-floodplain = { $count ->
    [one] a painted block reaches onto floodplain: ask the floodplain administrator what may stand there
   *[other] { $count } painted blocks, one of them here, reach onto floodplain: ask the floodplain administrator what may stand there
}
study-caution-block-wetland = { $count ->
    [one] a painted block reaches onto wetland: ask the wetland agency where its edge lies
   *[other] { $count } painted blocks, one of them here, reach onto wetland: ask the wetland agency where its edge lies
}
study-caution-block-steep = { $count ->
    [one] a painted block reaches onto steep land: ask a geotechnical engineer what the slope can carry
   *[other] { $count } painted blocks, one of them here, reach onto steep land: ask a geotechnical engineer what the slope can carry
}
study-caution-street-floodplain = { $count ->
    [one] a street crosses floodplain: ask the floodplain administrator how high a street must lie
   *[other] { $count } streets, one of them here, cross floodplain: ask the floodplain administrator how high a street must lie
}
study-caution-street-wetland = { $count ->
    [one] a street crosses wetland: ask the wetland agency whether a street may cross
   *[other] { $count } streets, one of them here, cross wetland: ask the wetland agency whether a street may cross
}
study-caution-street-steep = { $count ->
    [one] a street crosses steep land: ask a civil engineer about grade and banks
   *[other] { $count } streets, one of them here, cross steep land: ask a civil engineer about grade and banks
}
study-caution-street-water = { $count ->
    [one] a street crosses water: ask a structural engineer about the bridge or culvert
   *[other] { $count } streets, one of them here, cross water: ask a structural engineer about the bridge or culvert
}
