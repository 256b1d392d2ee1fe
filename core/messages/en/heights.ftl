# Heights of the ground: taken from files, drawn as contours, and what slopes and grades mean.

heights-title = Heights of the ground
heights-read = { $file } is read. It holds heights of the ground.
heights-in-file = Heights
# In the file's own unit, which is chosen beside it.
heights-from-to = { $lowest } to { $highest }
heights-cell = Cells
heights-cells = { $cells } of { $wide } by { $high }; { $empty } of them without a height
heights-unit = Heights are in
heights-unit-about = Few files say it, so look whether these heights are those of the place.
heights-caution = A grid of heights is no survey. Steep and unstable ground, drainage and grading are for licensed practice.
heights-asked = The heights of this area are being read.
heights-elsewhere = No height of the file lies in this area.
heights-too-few = { $filled } of { $count } points of the area lie where the file has no height. Choose an area that the file covers.
heights-known = The plan has these heights already.
heights-instead = They take the place of the heights that the plan has.
heights-range = A point every { $spacing }, from { $lowest } to { $highest } high.
heights-filled = { $count ->
    [one] One point lies where the file has no height; it takes that of the nearest point.
   *[other] { $count } points lie where the file has no height; each takes that of the nearest point.
}
heights-beyond = { $percent } % of the area lies beyond the file and stays without heights; there the ground counts as level with its edge.
# credit is who is to be named, and may be empty.
heights-source = { $filled ->
    [0] From { $file }. { $credit }
    [one] From { $file }; one height is that of the nearest point. { $credit }
   *[other] From { $file }; { $filled } heights are those of the nearest point. { $credit }
}
heights-step = heights of the ground
heights-remove = Take the heights away
heights-remove-step = take the heights away
