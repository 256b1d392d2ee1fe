# Plans: where points lie, what a new plan begins with, what part of a plan is looked at, and what is wrong with one.

## Where a point lies about the plan's origin. Code writes "12 m east, 8 m south" or, in US
## customary units, "41 ft east, 25 ft south": the number before each.

plan-meters-east = m east
plan-meters-west = m west
plan-meters-north = m north
plan-meters-south = m south
plan-feet-east = ft east
plan-feet-west = ft west
plan-feet-north = ft north
plan-feet-south = ft south

## What a new plan begins with. These names become part of the plan; people may change them.

plan-alternative-numbered = Alternative { $number }

# Building types.
plan-type-detached-small = Detached house, small lot
plan-type-detached-large = Detached house, large lot
plan-type-two-family = Two-family house
plan-type-attached = Attached house
# Cottages about a shared green.
plan-type-cottage-court = Cottage court
plan-type-apartments = Apartment house
# Walk-up buildings in a parking lot, as conventional subdivisions have them.
plan-type-garden-apartments = Garden apartments
plan-type-homes-above-shops = Homes above shops
plan-type-corner-store = Corner store with a home above
plan-type-workshop = Workshop and office
# A supermarket in a row of shops behind its parking lot.
plan-type-supermarket = Supermarket strip
plan-type-school = School
plan-type-hall = Community hall
plan-type-park = Park
# Open space, paved.
plan-type-square = Square
plan-type-farm = Farm or wood left as it is

# Street sections.
plan-section-main-street = Main street
plan-section-boulevard = Boulevard
plan-section-neighborhood-street = Neighborhood street
plan-section-narrow-street = Narrow street
# Narrower still than the narrow street, with sidewalks and with lots on both sides, at 10 miles an hour.
plan-section-lane = Lane
# Behind lots.
plan-section-alley = Alley
plan-section-path = Path
plan-section-path-homes = Path with homes along it
plan-section-subdivision-street = Subdivision street
plan-section-collector = Collector
plan-section-arterial = Arterial
plan-section-state-highway = State highway

## What part of a plan is looked at; stands behind the name of an alternative, parts joined by commas.

plan-scope-today = as it stands today
plan-scope-no-phase = no phase
plan-scope-one-phase = phase { $name } alone
plan-scope-phases = phases { $names }
plan-scope-without = without land of { $groups } owners
plan-scope-two-groups = { $first } and { $second }
# Groups of owners, as in "without land of unwilling owners": by what they think of the plan.
plan-owners-public = public
plan-owners-willing = willing
plan-owners-unknown = unknown
plan-owners-unwilling = unwilling

## Why a change to a plan was refused or its journal could not be followed.

# cell is a place in the program's own notation.
plan-edit-stale = the plan has changed since this edit was made (at { $cell })
plan-edit-no-alternative = there is no alternative { $id }
plan-history-gesture-open = a gesture is still in progress
plan-history-locked = the plan is open for looking and stays as it is
plan-history-no-gesture = no gesture is in progress
plan-history-not-storable = a point lies more than 100 km from the plan's origin, or a number is not finite (at { $cell })
plan-history-last-alternative = the last alternative can not be removed
plan-history-not-in-memory = step { $number } has to be read from the journal first
plan-history-not-a-step = entry { $number } is not a step of this plan's history
plan-tie-to-itself = street { $street } can not be tied to itself
# streets is a chain of numbers made of plan-tie-from-to.
plan-tie-circle = streets would hold on to each other in a circle: { $streets }
plan-tie-from-to = { $from } to { $to }
plan-journal-missing = entry { $number } is missing or damaged
plan-journal-unfitting = entry { $number } does not fit the plan: { $fault }
plan-journal-no-step = entry { $number } undoes or repeats a step that is not there
plan-journal-lost-steps = { $count ->
    [one] the plan is whole; { $count } earlier step can no longer be undone or repeated
   *[other] the plan is whole; { $count } earlier steps can no longer be undone or repeated
}
# reason is plan-journal-missing, -unfitting or -no-step.
plan-journal-lost-after = { $count ->
    [one] the plan is as it was at entry { $after } of its journal; what came later is lost ({ $reason }; { $count } later entry could not be used)
   *[other] the plan is as it was at entry { $after } of its journal; what came later is lost ({ $reason }; { $count } later entries could not be used)
}
plan-journal-lost-all = { $count ->
    [one] the plan is as it was when its journal began; what came later is lost ({ $reason }; { $count } later entry could not be used)
   *[other] the plan is as it was when its journal began; what came later is lost ({ $reason }; { $count } later entries could not be used)
}
plan-origin-unusable = the plan's origin at longitude { $longitude }, latitude { $latitude } is not usable: longitude must lie within 180 and latitude within 89 degrees

## What is wrong with a plan: the place, a colon and what is wrong there.

plan-place-document = plan
# Of the program of uses asked for.
plan-place-program-line = program line { $number }
plan-place-section = street section { $id }
plan-place-type = building type { $id }
plan-place-setting = setting { $id }
plan-place-topography = topography
plan-place-base-image = base image
plan-place-alternative = alternative { $id }
plan-place-site = site boundary
plan-place-site-at = site boundary at { $east_m } m east, { $north_m } m north
# A mark is anything drawn.
plan-place-mark = mark { $id } of alternative { $alternative }
plan-place-mark-at = mark { $id } of alternative { $alternative } at { $east_m } m east, { $north_m } m north

plan-fault-origin = the origin must lie within 180 degrees of longitude and 89 of latitude
plan-fault-no-alternative = there is no alternative
plan-fault-mark-id-taken = its id is also used in alternative { $alternative }
plan-fault-beyond-limit = lies more than 100 km from the plan's origin
plan-fault-too-short = a line needs two points apart from each other
plan-fault-too-few-corners = an outline needs three points apart from each other
plan-fault-no-area = the outline encloses no area
plan-fault-crosses-itself = the outline crosses or touches itself
plan-fault-no-section = there is no street section { $id }
plan-fault-no-type = there is no building type { $id }
plan-fault-no-phase = there is no phase { $id }
plan-fault-tied-to-nothing = tied to street { $street }, which is not there
plan-fault-tied-beyond = tied beyond the end of street { $street }
plan-fault-tied-in-circle = tied in a circle through street { $street }
plan-fault-off-its-tie = does not stand where it is tied to street { $street }
# A side of a painted block.
plan-fault-side-of-no-street = a side faces street { $street }, which is not there
# Shares are parts of 100 %.
plan-fault-over-whole = { $measure ->
    [program-shares] shares of the program must not exceed a whole
    [intensity] intensity must not exceed a whole
    [lot-shares] covered, paved and planted shares of the lot must not exceed a whole
    [outside-trips] shares of outside trips must not exceed a whole
   *[opacity] opacity must not exceed a whole
}
plan-fault-zero = { $measure ->
    [lot-width] lot width must be more than 0
    [lot-depth] lot depth must be more than 0
    [strip-width] width of a strip must be more than 0
    [people-per-home] people per home must be more than 0
    [stories] stories of a side must be more than 0
    [spacing] spacing of heights must be more than 0
    [columns] number of columns must be more than 0
   *[walking-pace] must be more than 0
}
plan-fault-not-finite = must be a finite number
plan-fault-out-of-order = low, typical and high must rise in this order
plan-fault-unlikely-pace = people walk at 0.3 to 3 meters a second
plan-fault-asked-twice = an earlier line asks for the same
plan-fault-named-twice = is named twice
plan-fault-no-strips = has no strips
plan-fault-no-travel-lane = is for motor vehicles and has no travel lane
plan-fault-homes-without-floor = has homes and no floor area for them
plan-fault-floor-without-homes = has floor area for homes and no homes
plan-fault-floor-without-jobs = has floor area where people work and no jobs on it, so none are counted there
plan-fault-ragged-rows = { $heights } heights do not fill whole rows of { $columns }
plan-fault-not-an-image = holds no image
plan-fault-more-votes = has more votes than people present

# Why points do not say where a picture under the drawing lies.
plan-picture-together = these points lie on one another; choose points far apart
plan-picture-in-line = three of these points lie in one line; choose points spread over the picture
plan-picture-torn = these points would tear the picture; look again which lies where
