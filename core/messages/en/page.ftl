## Alternatives.

page-step-copy-alternative = copy alternative
page-step-move-alternative = move alternative
page-step-delete-alternative = delete alternative
page-alternative-last = A plan keeps at least one alternative.
page-alternative-alone = The plan has a single alternative so far.
# In the name of a copy, after a parenthesis and before its number: Name (copy), Name (copy 2).
page-copy = copy
# Streets that so many of all alternatives share.
page-shared-in = in { $shared } of { $all }
page-shared-near = Streets within { $length } of one another, in about the same direction, count as one.

## Measures in US customary units, the number written before.

page-feet = { $number } ft
page-square-feet = { $number } ft²
page-acres = { $number } acres
page-feet-per-second = { $number } ft/s

## Where values come from, in the basis of a figure.

page-basis-counted = Counted on the drawing.
page-basis-chosen = Chosen in the plan.
page-basis-factor = Taken from the factor tables.

## Legends of maps of walking. A walk is one from a home to a daily need.

page-walks-none = no walks
page-walks-up-to-one = up to 1 walk
page-walks-busiest-tenth = walking on the busiest tenth of street length
page-walks-about = One walk from each home to the nearest of each daily need; not how many people will walk.
page-indirect-about = Length of the walk by the straight distance, both to the nearest center.
page-best-drawn = drawn center
page-best-none = no single point is reached by more homes
page-best-point = best single point
# The numbers of walks are written before.
page-walks-up-to = up to { $most } walks
page-walks-between = over { $least } to { $most } walks
page-walks-over = over { $least } walks
page-walks-busiest = busiest: { $street }
page-walks = { $walks } walks
page-indirect-row = { $times } times the straight line, { $homes }
# Homes is a number with its word, such as 120 homes.
page-best-reach = { $homes } within 5 minutes
page-best-reach-drawn = { $homes } within 5 minutes; drawn center: { $drawn }

## Said after a step or a command.

page-typed-not-understood = Not understood. A length is a number such as 120; a bearing one such as 45, or +90 from the run before.

## The samples.

page-sample-village = Compact village
page-sample-village-about = About 700 homes around a center; the rest stays farm and wood.
page-sample-subdivision = Conventional subdivision
page-sample-subdivision-about = The same program over all of the land, with one way in.
page-sample-strip = Worn-out strip, being repaired
page-sample-strip-about = A commercial strip and dead-end streets, with new connections.
page-sample-site = The site alone
page-sample-site-about = Boundary and constraints, nothing drawn yet.

## Opening and saving files.

page-saved = Saved as { $name }.
# First is a fault in a sentence of its own.
page-opened-partly = { $name } was opened, but not all of it is as it should be. { $first }
page-opened-partly-more = { $name } was opened, but not all of it is as it should be. { $first } (and { $count } more like it)

## Whether a place exists.

page-certainty-existing = Existing
page-certainty-committed = Committed
page-certainty-hoped = Hoped for

## Status of a street.

page-status-existing = Existing
page-status-kept = Kept
page-status-removed = To be removed
page-status-new = New

## Owner of a street.

page-owner-state = State
page-owner-town = Town or county
page-owner-private = Private
page-inside = Inside the site
page-outside = Outside the site

## What can be typed or chosen about a thing of the plan.

page-field-name = Name
page-field-kind = Kind
page-field-certainty = Certainty
page-field-phase = Phase
page-field-minimum-size = Minimum size
page-field-has-land = Draw its land by corners
page-field-outside-trips = Share of outside trips
page-field-wait = Wait to cross
page-field-buildable = May be built upon
page-field-in-site = Counts as site land
page-field-in-buildable = Counts as buildable land
page-field-walkable = May be walked across
page-field-owners = Owners
page-field-stories-beside = Most stories beside it
page-field-clear-beside = Buildings keep away
page-field-reach-beside = Lots beside it are within
page-field-use = Building type
page-field-intensity = Share of land built
page-field-homes = Homes
page-field-jobs = Jobs
page-field-shop-floor = Shop floor area
page-field-text = Remark
page-field-author = Table
page-field-votes = Votes
page-field-present = People present
page-field-street-section = Street section
page-field-status = Status
page-field-street-owner = Owner
page-field-outside = Lies
page-field-plan-name = Plan name
page-field-alternative-name = Its name
page-field-alternative-table = Drawn by table
page-field-about = What it shows
page-field-latitude = Latitude, north
page-field-longitude = Longitude, east
page-field-phase-name = Phase name
page-field-asked = Program
# Where things that are selected together hold unlike values.
page-different = Different
page-lots-beside = { $count ->
    [one] { $count } lot beside it
   *[other] { $count } lots beside it
}
page-lots-without-room = { $count ->
    [one] No room for the building of { $count } lot; it is counted all the same
   *[other] No room for the buildings of { $count } lots; they are counted all the same
}
page-unit-square-feet = ft²
page-unit-acres = acres

## What a thing is called, as a heading.

page-title-street = Street
page-title-block = Block
page-title-soft-area = Soft area
page-title-site-access = Site access
page-title-parcel = Parcel
page-title-barrier = Barrier or fence
page-title-crossing = Crossing
page-title-outside = Outside context
page-title-note = Note
page-title-together = All that is selected
page-field-parcel-label = Label, never a person's name

## Headings of the column of figures.

page-heading-land = Land
page-heading-homes = Homes and people
page-heading-walking = Walking
page-heading-mix = Mix
page-heading-streets = Streets
page-heading-blocks = Blocks
page-heading-sun = Sun
page-heading-other = Other

## Short titles of the first figures, where there is little room.

page-short-homes-of-asked = Homes drawn of asked
page-short-density = Homes by buildable land
page-short-homes = Homes
page-short-length-per-home = Street length per home
page-short-center = Homes within 5 min of a center
page-short-park = Homes within 5 min of a park or square
page-short-all-five = Homes with all five needs within 10 min
page-short-all-five-sure = The same, without what is hoped for
page-short-jobs = Jobs
page-short-jobs-per-home = Jobs per home
page-short-ways = Ways in and out
page-short-behind-one = Most homes behind a single one
page-short-perimeter-median = Block perimeter, median
page-short-perimeter-longest = Block perimeter, longest

## How many rows of a table hold anything.

page-rows-none = none
page-rows-one = 1 row
page-rows-kinds = { $count } kinds
page-rows = { $count } rows

## Forms.

page-site = Site boundary
page-site-none = None is drawn yet.
page-field-refused = That is no number or name that can be taken; the plan stays as it was.
page-phase-in-use = Something is drawn in this phase; move it to another one first.
page-step-add-phase = add phase
page-step-move-phase = move phase
page-step-delete-phase = delete phase
page-phase-new = Phase { $number }
# Field is the name of a field, such as "minimum size".
page-step-change = change { $field }
page-given-up = Given up; the plan is as before.
page-tool = { $tool } tool. { $awaits }

## Whether this browser keeps the plan.

page-kept = Kept in this browser
page-keeping = Keeping…
page-kept-lost = This browser could not keep the last step of the plan that was open before.
page-not-kept-full = This browser can not keep the plan (it is full): save it as a file.
page-not-kept-other-window = This browser keeps the plan no longer (another window has it open and went on): save it as a file, or choose how to go on.
page-not-kept-forgotten = This browser keeps the plan no longer (another window forgot it): save it as a file, or go on as a copy.
page-not-kept-refused = This browser can not keep the plan (it refuses to): save it as a file.
page-kept-stroke-lost = the stroke that was not finished does not fit the plan and is left out
page-ago-now = just now
page-kept-unusable = the plan can not be opened again: { $losses }
page-ago-minutes = { $count ->
    [one] { $count } minute ago
   *[other] { $count } minutes ago
}
page-ago-hours = { $count ->
    [one] { $count } hour ago
   *[other] { $count } hours ago
}
page-ago-days = { $count ->
    [one] { $count } day ago
   *[other] { $count } days ago
}
page-kept-no-longer = this browser keeps the plan no longer: another window forgot it
page-kept-not-so-far = The steps before this one are not kept in this browser.
page-kept-not-handed-out = this browser does not hand out what it keeps
# Opened is a sentence that says which plan was opened.
page-kept-unfinished = { $opened } The stroke that was not finished is in it; undo takes it back.
page-kept-partly = Not all that was kept could be used: { $losses }.
page-forgotten = { $plan } is forgotten.
page-forgotten-already = { $plan } was forgotten already.
page-not-forgotten = { $plan } is not forgotten: another window went on with it.
page-does-not-forget = This browser does not forget { $plan }.
page-lasting = This browser now keeps your plans until you remove them.
page-not-lasting = This browser makes no promise: save plans that matter as files.

## Maps over the plan.

page-map-plain = No map, the plan alone
page-map-five = The five daily needs in reach
page-map-routes = Walking routes
page-map-indirect = Least direct walks to the center
page-map-shared = Streets that alternatives share
page-needs-all = all five
page-needs-none = none of the five
page-node-counted = counted
page-node-heads = heads of dead ends counted
page-node-left-out = counted by other rules only
page-map-walk = Walk to { $destination }
page-map-said = Map: { $map }.
page-share-of-homes = { $share } of homes
page-minutes = { $count } minutes
# The pace of walking.
page-at-pace = At { $pace }.
page-best-point-not = { $note } Best single point: { $why }.
page-needs = { $count } of the five
page-within-minutes = Within { $count } minutes at { $pace }.
page-no-figure = there is no figure { $figure }

## A plan that was not named yet.

page-untitled = Untitled plan

## Moments of the history.

page-moment-none = No moment is marked.
page-moment-here = The plan is there already.
page-moment-earlier-step = an earlier step
page-moment-step = step { $number }
page-moment-marked = Marked: { $name }. Changes are shown against it.
page-moment-after = After step { $number }
page-was = was { $before }

## The program.

page-program-homes = Homes in all
page-program-shop-floor = Shop floor area
page-program-work-floor = Work floor area
page-program-school-seats = School seats
page-program-park-land = Park land
page-program-parking = Parking spaces
# More is drawn than is asked.
page-program-beyond = { $number } more

## What of the plan is measured.

page-part-all = All of it, as proposed
page-part-today = As it stands today
page-part-up-to = Up to { $phase }
page-part-alone = { $phase } alone

## What a lot of a building type holds.

page-holds-open = open land
page-holds-floors = { $count ->
    [one] { $count } floor, { $width } lot
   *[other] { $count } floors, { $width } lot
}
page-holds-homes = { $count ->
    [one] { $count } home on a { $width } lot
   *[other] { $count } homes on a { $width } lot
}
# The drawing in words, for those who listen: the alternative and the walking are sentences of their own.
page-described = Drawing of { $plan }. { $alternative } { $walk }

## Steps.

page-measured-all = Measured: all of it
page-step-units = change units
page-units-metric = Numbers are in meters and hectares now.
page-units-customary = Numbers are in feet and acres now.
# What a listener is told while keys draw.
page-run-shown = { $length }, bearing { $degrees }°
page-point-set = Point { $number } set. { $awaits }
page-nothing-more = There is nothing more.
page-measured = Measured: { $what }
page-undone = Undone: { $step }
page-done-again = Done again: { $step }
page-places-shown = { $count ->
    [one] { $count } place shown on the drawing.
   *[other] { $count } places shown on the drawing.
}

## What stands where, and streets without a name.

page-extent-point = a point
page-extent-stretch = a stretch of street
page-path = Path
page-alley = Alley
page-lane = Lane
page-street = Street
page-block-no-use = no use but its sides

## Strips of a street section, in a list with their widths.

page-strip-walk = walk
page-strip-planting = planting
page-strip-parking = parking
page-strip-bicycles = bicycles
page-strip-travel = travel
page-strip-median = median
page-strip-swale = swale

## What is selected, what was opened, and what steps changed.

page-selected-streets = { $count ->
    [one] { $count } street selected
   *[other] { $count } streets selected
}
page-selected-things = { $count ->
    [one] { $count } thing selected
   *[other] { $count } things selected
}
page-selected-both = { $streets ->
    [one] { $streets } street
   *[other] { $streets } streets
} and { $things ->
    [one] { $things } other thing
   *[other] { $things } other things
} selected
page-selected-corner = Corner { $number } of { $count } of { $street }
page-selected-corner-held = Corner { $number } of { $count } of { $street }, held by another street
page-selected-place = { $kind }, { $extent }
page-selected-place-named = { $kind } “{ $name }”, { $extent }
page-selected-street = { $street }, { $section }, right-of-way { $width }, { $length } long
page-selected-street-alone = { $street }, { $length } long
page-selected-block = Block: { $program }
page-selected-block-sides = { $count ->
    [one] Block: { $program }; { $count } side of its own
   *[other] Block: { $program }; { $count } sides of its own
}
page-strips-mph = { $strips }; { $speed } mph
page-opened = Opened { $plan }. { $alternative }
page-alternative-unnamed = Alternative
page-alternative = { $name }: { $streets ->
    [one] { $streets } street
   *[other] { $streets } streets
} drawn and { $blocks ->
    [one] { $blocks } block
   *[other] { $blocks } blocks
} painted.
page-walk-reached = { $length } of street lie within 5 minutes of a center.
page-figure-moved = { $figure } { $value }, was { $before }
page-step-moved = { $step }. { $figures }.
page-step-moved-more = { $step }. { $figures }; and { $count } more.
page-step-moved-nothing = { $step }. No figure changed.

## Faults of the browser.

page-no-page-to-save = there is no page to save from
page-file-refused = the browser did not accept the file { $file }
page-file-not-fetched = { $file } could not be fetched: { $fault }
page-file-not-read = the file { $file } could not be read
page-no-page-to-draw = there is no page to draw on
page-no-drawing = the browser can not draw on a canvas
page-no-canvas = there is no canvas { $canvas }

## The page's outermost parts.

page-skip = Skip to the drawing
page-drawing-tools = Drawing tools
page-dismiss = Dismiss

## Editors: words of several of them.

page-name = Name
page-name-empty = a name can not be empty
page-building-type = Building type

## The editor of a building type.

page-type-tint = Land is tinted as
page-type-envelope = Envelope
page-type-price = Price or rent
page-type-stories = Building, from the ground up
page-type-add-story = Add a story
page-type-envelope-and-price = Envelope and price
page-type-lot = Lot
page-type-width = Width along the street
page-type-depth = Depth
page-type-homes-and-people = Homes and people
page-type-homes = Homes on a lot
page-type-people = People per home
page-type-parking = Parking
page-type-parking-on-lot = Parking on a lot
page-type-cover = Land cover of a lot
page-type-under-buildings = Under buildings
page-type-paved = Paved
page-type-planted = Planted
page-type-floor-area = Floor area on a lot
page-type-height = Height, floor to floor
page-type-jobs = Jobs on the floor

## Uses of a story.

page-floor-homes = Homes
page-floor-work = Work
page-floor-shops = Shops
page-floor-learning = Learning
page-floor-gathering = Gathering
page-floor-parking = Parking

## How well a building keeps heat.

page-envelope-older = As in older buildings
page-envelope-code = As the code asks
page-envelope-better = Better than the code

## Price bands.

page-price-lower = Below the middle
page-price-middle = About the middle
page-price-upper = Above the middle

## Stories of a building type, by number.

page-story = Story { $number }
page-story-use = Use of story { $number }
page-story-remove = Remove story { $number }

## The cut through a street.

page-cut-close = Close the cut
page-cut-where = Where it runs
page-cut-left = Left
page-cut-right = Right
page-cut-open = no building on the cut within 130 ft (40 m)
page-cut-ratio = Height to width
page-cut-ratio-about = Height: mean of both sides, story heights of the building types without roofs. Width: between the fronts. LEED 2009 for Neighborhood Development, prerequisite NPDp1, asks for 1 : 3 or closer along 15% of frontage.
page-cut-no-ratio = none: a side is open

## Uses of floors, painted on the building in the cut.

page-cut-homes = homes
page-cut-work = work
page-cut-shops = shops
page-cut-learning = learning
page-cut-gathering = gathering
page-cut-parking = parking

## The cut through a street, in sentences.

page-cut = Cut through { $street }
# How far along a street the cut is, and how long the street is.
page-cut-at = { $along } of { $length }
page-cut-side = { $name }, { $stories ->
    [one] { $stories } story
   *[other] { $stories } stories
}, { $height } high, { $setback } from the right-of-way
page-cut-right-of-way = right-of-way { $width }

## Buttons, steps and refusals of the editors.

page-editor-done = Done
page-editor-duplicate = Duplicate
page-editor-delete = Delete
page-editor-gone = what was edited is no longer there
page-editor-last = the last one can not be deleted
page-step-section = change street section
page-step-building-type = change building type
page-step-use = change use
page-step-walking = change a setting
page-step-duplicate = duplicate
page-step-delete-entry = delete from the palette

## Copies and users of what is edited.

# The name of a duplicate.
page-editor-variant = { $name }, variant
page-editor-used = can be deleted where nothing uses it; here it is used by { $users }
page-and = { $first } and { $second }
page-count-blocks = { $count ->
    [one] { $count } block
   *[other] { $count } blocks
}
page-count-soft-areas = { $count ->
    [one] { $count } soft area
   *[other] { $count } soft areas
}
page-count-program-lines = { $count ->
    [one] { $count } line of the program
   *[other] { $count } lines of the program
}

## The editor of the use of land.

page-land-share = Share
page-land-most-stories = Most stories
page-land-setback = Setback
page-land = Use of this land
page-land-yields = What it yields now
page-land-sides = Its sides
page-land-add-type = Add a building type
page-land-fill-up = Fill up to 100%
page-land-together = Together
page-front-street = As the street allows
page-front-front = Lots front on it
page-front-side = Their sides lie along it
page-front-rear = Their rears lie along it
page-front-none = Nothing touches it
page-land-lots-stand = How lots stand
page-land-as-the-land = As the land
page-land-shopfront = Ground floor opens as shops
page-land-unsaid-stories = Empty: as the building type has.
page-land-unsaid-setback = Empty: as is usual for the building type.
page-land-asleep = This land is no longer enclosed: its use sleeps until streets enclose it again.
page-land-all-types = every building type is in the program
page-yield-lots = Lots
page-yield-homes = Homes
page-yield-jobs = Jobs
page-yield-floor = Floor area
page-yield-stories = Stories
page-yield-parking = Parking on the lots

## Where a side of land lies.

page-side = Side
page-side-north = North side
page-side-south = South side
page-side-east = East side
page-side-west = West side
page-side-northeast = Northeast side
page-side-northwest = Northwest side
page-side-southeast = Southeast side
page-side-southwest = Southwest side
page-said-shopfront = shopfront

## The use of land, in sentences.

page-land-share-of = Share of { $name }
page-land-remove = Remove { $name }
page-land-type = Building type { $number }
page-land-without-use = { $total }, { $rest } without use
page-to = { $least } to { $most }
page-side-on-left = { $street }, left
page-side-on-right = { $street }, right
page-said-stories = { $count ->
    [one] at most { $count } story
   *[other] at most { $count } stories
}
page-said-clear = buildings { $distance } away
page-said-lots = { $count ->
    [one] { $count } lot
   *[other] { $count } lots
}
page-said-setback = setback { $setback }

## What can be done with a selected street.

page-street-cut = Show the cut
page-street-section = Edit its street section

## Units behind numbers that are typed, and why a typed number is refused.

page-not-a-number = type a number such as 9.5
page-unit-feet = ft
page-unit-mph = mph
page-unit-feet-per-second = ft/s
page-unit-people = people
page-unit-spaces = spaces
page-unit-homes-per-hectare = homes per ha
page-unit-homes-per-acre = homes per acre
page-unit-per-hectare = per ha
page-unit-per-1000-square-feet = per 1,000 ft²

## Bounds of a number.

page-from-to = from { $least } to { $most }

## The editor of a street section.

page-kind-walk = Walk
page-kind-planting = Planting
page-kind-parking = Parking
page-kind-bicycle = Bicycle
page-kind-travel = Travel
page-kind-median = Median
page-kind-swale = Swale
page-strip-width = Width of a strip
page-target-speed = Target speed
page-may-walk = People may walk along it
page-may-cycle = Bicycles may use it
page-may-drive = Motor vehicles may use it
page-fronts-left = Lots may front on its left
page-fronts-right = Lots may front on its right
page-section = Street section
page-right-of-way = Right-of-way
page-strips = Strips, from left to right
page-strip-add = Add a strip
page-speed-and-use = Speed and use
page-section-caution = Fire access and the width of lanes are for local codes and licensed practice.
page-strip-no-place = there is no strip on that side
page-strip-last = a street section needs a strip

## Sources of widths.

page-source-walk = Urban Street Design Guide, NACTO, 2013, from memory
page-source-bicycle = LEED for Neighborhood Development, draft of 2011, bicycle network
page-source-by-speed = SmartCode version 9.2, 2009, tables 3 and 4, from memory

## Strips of the edited street section, by number.

page-strip = Strip { $number } of { $count }
page-strip-width-of = Width of strip { $number } of { $count }
page-strip-to-left = Move to the left: strip { $number } of { $count }
page-strip-to-right = Move to the right: strip { $number } of { $count }
page-strip-remove = Remove strip { $number } of { $count }
page-strip-narrow = { $strip }: { $width } is narrow; { $least } is common ({ $source }).

## The editor of the settings of walking.

page-walking = Settings
page-walking-speeds = Speeds
page-walking-enough = What counts, and waits
page-walking-places = A place of the kind counts however small its floor; places hoped for are told apart in the figures.
page-walking-pace-source = 3 miles an hour, a quarter mile in five minutes (R. Ewing, Pedestrian- and Transit-Friendly Design)
page-walking-own-source = chosen in this plan
page-walking-out-of-order = slower walkers: low, typical and high must rise in this order
page-walking-pace = Walking pace of the plan
page-walking-slower-low = Slower walkers, low
page-walking-slower-typical = Slower walkers, typical
page-walking-slower-high = Slower walkers, high

## Where the default of a setting comes from.

page-default = Default { $value }: { $source }.
page-override-not-used = A value that the plan gives a factor is not used, the shipped one counts: { $fault }.
page-from-memory = { $source }, from memory
page-trees = Trees along streets
page-tree-spacing = Distance between street trees
page-common-practice = common practice, no source
page-allowance = Homes a town's rule allows
page-allowance-about = So many homes to the land left when rights-of-way, and the shares below of land under constraints, are taken off. Ask the town for its own numbers.
page-allowance-none = none are worked out until your town's number stands here
page-allowance-shares = Share taken off of land under each kind of constraint. Land under two kinds counts for the first.
page-allowance-source = Marshall Township, Pennsylvania, section 919, cluster option

## What the browser refuses to the page.

page-request-failed = the request failed
page-answer-no-text = the answer is not text
page-no-worker = the browser starts no worker
page-worker-unreadable = the worker was told what it can not read, { $bytes } bytes of it
