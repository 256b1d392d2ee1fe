# Heights of the ground: taken from files, drawn as contours, and what slopes and grades mean.

heights-title = Heights of the ground
heights-read = { $file } is read. It holds heights of the ground.
heights-in-file = Heights
# In the file's own unit, which is chosen beside it.
heights-from-to = { $lowest } to { $highest }
heights-cell = Cells
heights-cells = { $cells } of { $wide } by { $high }; { $empty } of them without a height
heights-unit = Heights are in
heights-unit-about = Few files say it. Where this one does not, feet are taken if its coordinates are in feet, and meters if not: look whether these heights are those of the place.
heights-place = The grid does not say where on Earth it lies. Its zero is its southwestern corner; its middle is put at the plan’s origin unless you type otherwise.
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

## Contours and the map of slopes.

heights-contours = contours every { $interval }
heights-map = Slope of the ground
heights-none = The plan has no heights of the ground. Take them from a file of base data in the plan’s menu.
# A class of slope; a slope on a border is in the steeper class.
heights-class-under = under { $high } %
heights-class-between = { $low } to under { $high } %
heights-class-over = { $low } % and over
heights-steep-walk = Streets over 5 % (walks)
heights-steep-fire = Streets over { $limit } % (fire access)
heights-percent = { $grade } %
heights-map-note = Land within the site by the classes of the settings; unless set otherwise these are the slope zones of a city code (ch. 17.52, Ord. 1000, 2022; ecode360 43293071). Streets by pieces of 20 m: walks after ICC A117.1, fire access after the International Fire Code, app. D, unless set otherwise. A grid is no survey: the local code and licensed practice decide on steep or unstable ground, drainage and grading.
# Where classes of slope end, in the settings.
heights-border = border of a slope class
heights-border-of = Class { $number } ends below
heights-border-about = Where the classes of the map of slopes end. Take the borders of the local code: it and licensed practice decide what may be built on steep ground.
heights-border-source = slope zones of a city code, ch. 17.52, Ord. 1000, 2022
heights-border-refused = each class must end at a steeper slope than the one before it

## A street along the ground.

heights-along = Grade along the street
heights-steepest = Steepest piece of 20 m
heights-grade-up = { $grade } % up along the street
heights-grade-down = { $grade } % down along the street
heights-limit-field = Steepest for fire access
heights-limit-step = set the steepest fire access
heights-limit-fire = Over { $limit } %, fire access
heights-limit-fire-source = International Fire Code, appendix D, where it is adopted, unless the fire chief approves more
heights-limit-ramp = Over 8.33 %, ramps
heights-limit-ramp-source = 2010 ADA Standards, 405.2: 1 in 12
heights-limit-walk = Over 5 %, walks
heights-limit-walk-source = ICC A117.1, 403.3: 1 in 20; along a street a walk may follow the street’s own grade
heights-steeper = { $length } steeper
heights-no-steeper = nothing steeper
heights-decides = By the ground as it is, without cut and fill. Planning level: the local code and a licensed engineer decide.
heights-low = low point
heights-true = true to scale
heights-exaggerated = heights drawn { $times } times
# along is the length and the scale of heights.
heights-profile = The ground along the street, { $along }. From { $from } high at its start to { $to } at its end. { $low ->
    [0] No low point between.
    [one] One low point between.
   *[other] { $low } low points between.
}
