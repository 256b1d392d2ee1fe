# Measures: what figures counted on the drawing are called, and why they can not be worked out. Titles are in lower case:
# they stand in tables, and in formulas as "homes × people per home".
# Soft areas are drawn roughly: what is in them is an estimate. A front is the side of a lot toward a street, a side
# of a block along it. Nodes and links are those of the network of streets.

## Lots, densities and kinds of homes.

measures-group-with-homes = lots with homes
measures-group-other-floor = lots with work, shops, schools or halls
measures-group-built = lots with buildings
measures-group-learning = lots with schools
measures-group-without-homes = lots with work, shops, schools or halls and no homes
measures-band-lower = below the middle of the market
measures-band-middle = about the middle
measures-band-upper = above the middle
measures-lot-group = group of lots
measures-price-band = price or rent band
measures-phase = phase
measures-parking-per-lot = parking spaces on a lot
measures-parking-by-type = parking spaces on lots by building type
measures-parking = parking spaces on lots
measures-lot-land = land of lots as laid
measures-land-left = land of blocks to be built on that lots leave
measures-no-lot = land in no lot, on blocks to be built on
measures-lot-typical = area of a typical lot
measures-lots-in-group = whether a building type's lots are in a group
measures-lot-land-type = land of lots by building type
measures-lot-land-type-group = land of lots by building type and group
measures-lot-land-group = land of lots by group
measures-land-with-homes = land of lots with homes
measures-land-other-floor = land of lots with work, shops, schools or halls
measures-land-built = land of lots with buildings
measures-land-school = land of lots with schools
measures-density-site-land = land of the whole-site density
measures-density-buildable-land = land of the buildable density
measures-density-site = homes by land of the whole site
measures-density-buildable = homes by buildable land
measures-density-lots = homes by land of lots with homes
measures-floor-no-parking = floor area without parking
measures-floor-other = floor area of work, shops, schools and halls
measures-far-other = floor-area ratio of work, shops, schools and halls on their lots
measures-far-all = floor-area ratio of all floor on lots with buildings
measures-type-diversity = diversity of homes over building types
measures-in-band = whether a building type is in a price band
measures-homes-type-band = homes by building type and price band
measures-homes-band = homes by price or rent band
measures-lots-type-phase = lots by building type and phase
measures-homes-phase = homes by phase
measures-homes-type-phase = homes by building type and phase
measures-people-per-home-here = people per home, as local households are
measures-people-type-band = people by building type and price band
measures-people-band = people by price or rent band
measures-people-type-phase = people by building type and phase
measures-people-phase = people by phase
measures-jobs-type-band = jobs by building type and price band
measures-jobs-band = jobs by price or rent band of their buildings
measures-jobs-type-phase = jobs by building type and phase
measures-jobs-phase = jobs by phase
measures-floor-type-band = floor area by building type and price band
measures-floor-band = floor area by price or rent band
measures-floor-type-phase = floor area by building type and phase
measures-floor-phase = floor area by phase
measures-jobs-type = jobs by building type
measures-floor-lot = floor area on a lot
measures-jobs-lot-workplace = jobs on a lot by workplace
measures-jobs-lot = jobs on a lot
measures-soft-lots-area-phase = rough lots by soft area, building type and phase
measures-soft-lots-phase = rough lots by building type and phase
measures-all-lots-phase = lots and rough lots by building type and phase
measures-diversity-name = Simpson's diversity
measures-diversity-words = One, less the sum over building types of the square of each type's share of the homes: the chance that two homes picked at random are of different types. Types are those of the palette.
measures-diversity-one-list = diversity takes one list and gives one number
measures-homes-below-zero = a number of homes is below zero
measures-all-homes = all homes
measures-diversity = diversity

## Why a figure can not be worked out.

measures-no-homes = no homes are drawn
measures-no-floor = no floor area is drawn
measures-no-homes-where-walked = no homes are drawn where people walk
measures-no-center = no neighborhood center is drawn
measures-share-of = share of { $what }

## Phases and places.

measures-whole-plan = the whole plan
# Followed by a place such as "12 m east, 8 m south". A face is the part of a block that one use is painted on.
measures-soft-at = soft area at
measures-block-at = block at

## Homes and people.

measures-building-type = building type
measures-homes-per-lot = homes on a lot
measures-people-per-home = people per home, by building type
measures-household-scale = local households beside the building types' own
measures-lots-type = lots by building type
measures-homes-type = homes by building type
measures-homes = homes
measures-people-type = people by building type
measures-people = people

## Floor area and jobs by use.

measures-use-homes = homes
measures-use-work = work
measures-use-shops = shops
measures-use-learning = learning
measures-use-gathering = gathering
measures-use = use
measures-workplace = workplace
measures-floor-use-lot = floor area of each use on a lot
measures-floor-workplace-lot = floor area of each workplace on a lot
measures-jobs-per-floor = jobs on floor area, as the building types say
measures-floor-per-job-scale = local floor area per job beside the building types' own
measures-jobs-type-workplace = jobs by building type and workplace
measures-floor-type-use = floor area by building type and use
measures-floor-use = floor area by use
measures-floor-type-workplace = floor area by building type and workplace
measures-floor-workplace = floor area by workplace
measures-use-evenness = evenness of floor area over five uses
measures-jobs-workplace = jobs by workplace
measures-jobs = jobs
measures-jobs-per-home = jobs per home
measures-workers-per-home = employed residents per home
measures-workers = employed residents
measures-jobs-per-worker = jobs per employed resident
measures-evenness-name = evenness over a fixed list
measures-evenness-words = Each kind's share of the total, times the logarithm of the share, summed with the sign turned, by the logarithm of the number of kinds listed. A kind without floor area counts in the list and adds nothing.
measures-evenness-one-list = evenness takes one list and gives one number
measures-amount-below-zero = an amount is below zero
measures-all-floor = all floor area
measures-evenness = evenness
# The name of a building type that one side of a street changes.
measures-built-stories = { $stories ->
    [one] { $name }, 1 story
   *[other] { $name }, { $stories } stories
}
measures-built-stories-shopfront = { $stories ->
    [one] { $name }, 1 story, shopfront
   *[other] { $name }, { $stories } stories, shopfront
}
measures-built-shopfront = { $name }, shopfront

## The program: what is asked for, and what of it is drawn.

measures-not-asked-homes = the program does not ask for homes
measures-not-asked-shop-floor = the program does not ask for shop floor area
measures-not-asked-work-floor = the program does not ask for work floor area
measures-not-asked-school-seats = the program does not ask for school seats
measures-not-asked-park-land = the program does not ask for park land
measures-not-asked-parking = the program does not ask for parking spaces
# What the program asks for; $what is homes, shop_floor, work_floor, school_seats, park_land or parking.
measures-program-typed = { $what ->
    [shop_floor] shop floor area typed into the program
    [work_floor] work floor area typed into the program
    [school_seats] school seats typed into the program
    [park_land] park land typed into the program
    [parking] parking spaces typed into the program
   *[homes] homes typed into the program
}
measures-program-asked = { $what ->
    [shop_floor] shop floor area asked
    [work_floor] work floor area asked
    [school_seats] school seats asked
    [park_land] park land asked
    [parking] parking spaces asked
   *[homes] homes asked
}
measures-program-left = { $what ->
    [shop_floor] shop floor area left to draw
    [work_floor] work floor area left to draw
    [school_seats] school seats left to draw
    [park_land] park land left to draw
    [parking] parking spaces left to draw
   *[homes] homes left to draw
}
measures-type-not-in-palette = a building type that is not in the palette
measures-drawn-shop-floor = shop floor area drawn
measures-drawn-work-floor = work floor area drawn
measures-drawn-school-floor = school floor area drawn
measures-floor-per-seat = floor area per school seat
measures-drawn-homes = homes drawn
measures-drawn-seats = school seats drawn
measures-drawn-parks = park land drawn
measures-drawn-parking = parking spaces drawn
measures-homes-of-asked = homes drawn of asked
measures-asked-type = building type asked for
measures-homes-of-typed = homes of a type typed into the program
measures-is-asked-type = whether a building type is the one asked for
measures-homes-of-asked-type = homes asked by type
measures-homes-asked-built = homes by type asked for and building type
measures-homes-of-drawn = homes drawn by type asked for
measures-homes-of-left = homes left to draw by type

## Soft areas.

measures-soft-area = soft area
measures-soft-land = land of each soft area
measures-soft-share = share of a soft area given to a building type
measures-lot-yield = share of land that becomes lots
measures-lots-per-land = lots that land makes
measures-soft-lot-land = land that becomes lots in soft areas, by soft area and building type
measures-soft-lots-area-type = rough lots by soft area and building type
measures-soft-lots-type = rough lots in soft areas by building type
measures-soft-homes-type = rough homes in soft areas by building type
measures-soft-homes = rough homes in soft areas
measures-soft-homes-area-type = rough homes by soft area and building type
measures-soft-homes-area = rough homes by soft area
measures-soft-in-phase = whether a soft area is built in a phase
measures-soft-people-type = people in rough homes by building type
measures-soft-people = people in rough homes of soft areas
measures-soft-floor-type-use = rough floor area by building type and use
measures-soft-floor-use = rough floor area in soft areas by use
measures-soft-floor-type-workplace = rough floor area by building type and workplace
measures-soft-floor-workplace = rough floor area by workplace
measures-soft-jobs-type-workplace = rough jobs by building type and workplace
measures-soft-jobs-workplace = rough jobs by workplace
measures-soft-jobs = rough jobs in soft areas
measures-is-park = whether land of a building type is park land
measures-soft-parks-area-type = rough park land by soft area and building type
measures-soft-parks = rough park land in soft areas

## Where people walk to.

measures-to-center = a center
measures-to-homes = other homes
measures-to-work = work
measures-to-shops = shops
measures-to-learning = learning
measures-to-gathering = gathering
measures-to-all-five = all five daily needs
measures-to-all-five-sure = all five, without what is hoped for
measures-to-park = a park or square
measures-to-school = a school
measures-to-transit-stop = a transit stop

## Homes within a walk.

measures-destination = destination
measures-walking-time = walking time
measures-within-5 = within 5 minutes
measures-within-10 = within 10 minutes
measures-homes-within = homes within a walking time
measures-base-speed = base walking speed
measures-walking-speed = walking speed
measures-slower-speed = walking speed of slower walkers
# $pace is slower or planning.
measures-walk-base-time = { $pace ->
    [slower] time at base speed of a walk within { $minutes } minutes for slower walkers
   *[planning] time at base speed of a walk within { $minutes } minutes
}
measures-walk-homes = { $pace ->
    [slower] homes within { $minutes } minutes for slower walkers, by destination
   *[planning] homes within { $minutes } minutes, by destination
}
measures-walk-homes-share = { $pace ->
    [slower] share of homes within { $minutes } minutes for slower walkers, by destination
   *[planning] share of homes within { $minutes } minutes, by destination
}
measures-center-5 = homes within 5 minutes of a center
measures-center-5-share = share of homes within 5 minutes of a center
measures-center-5-slower = share of homes within 5 minutes of a center for slower walkers
measures-five-10 = share of homes with all five daily needs within 10 minutes
measures-five-sure-10 = share of homes with all five within 10 minutes, without what is hoped for
measures-five-10-slower = share of homes with all five daily needs within 10 minutes for slower walkers
measures-park-5 = share of homes within 5 minutes of a park or square

## The settings of walking, and where what counts by default comes from.

measures-set-homes = fewest homes together that count as neighbors
measures-set-work = fewest jobs together that count as work
measures-set-shops = least shop floor together that counts as shops
measures-set-learning = least floor for learning together that counts
measures-set-gathering = least floor for gathering together that counts
measures-set-school = least floor for learning together that counts as a school
measures-set-park = least open land in a block face that counts as a park or square
measures-set-wait-wide = mean wait to cross a wide or fast street
measures-set-wait-middle = mean wait to cross a street of three lanes or 35 miles an hour
measures-set-shared-speed = highest target speed of a street without a walk that people walk in
measures-set-shed-buffer = width of a walk-shed's band to each side of the reached streets
measures-source-common = common practice, no source
measures-source-shops = the smallest corner store, 1,500 square feet (R. Gibbs, A primer on retail types and urban centers, Congress for the New Urbanism)
measures-source-learning = a child care center or branch library: common practice, no source
measures-source-gathering = a small hall: common practice, no source
measures-source-park = a sixth of an acre (LEED 2009 for Neighborhood Development, credit NPDc9, access to civic and public space)
measures-source-wait-wide = a signal with a cycle of 90 s and 11 s to start in: half of (90 − 11)² ÷ 90 (Highway Capacity Manual, 2000, equation 18-5; the cycle is common practice, no source)
measures-source-wait-middle = three lanes of 11 feet with 300 vehicles an hour that do not yield: (e^(v t) − v t − 1) ÷ v, t = length ÷ 3.5 feet a second + 3 s (Highway Capacity Manual, 2010, from memory; the traffic is common practice, no source)
measures-source-shared-speed = 20 miles an hour: common practice, no source

## Why nobody can walk to a destination.

measures-no-walkable-street = no street a person can walk on is drawn
measures-no-work = no place of work is drawn
measures-no-shops = no shops are drawn
measures-no-learning = no place of learning is drawn
measures-no-gathering = no place of gathering is drawn
measures-no-all-five = not all five daily needs are drawn
measures-no-park = no park or square is drawn
measures-no-school = no school is drawn
measures-no-transit-stop = no transit stop is drawn

## Parts of the land bar.

measures-part-homes = homes
measures-part-shops-work = shops and work
measures-part-civic = civic
measures-part-green = green
measures-part-water = water
measures-part-streets = streets
measures-part-unused = not yet given a use

## What gives land its use.

measures-from-right-of-way = rights-of-way
measures-from-held-back = land held back
measures-from-blocks = blocks with a use
measures-from-places = places drawn over blocks without a use
measures-from-soft-areas = soft areas
measures-from-nothing = nothing yet

## What holds land back.

measures-held-water = open water
measures-held-wetland = wetland
measures-held-floodplain = floodplain
measures-held-steep = steep land
measures-held-conservation = conservation
measures-held-contaminated = contaminated ground
measures-held-easement = easements
measures-held-keep = kept as it is
measures-held-owner = owners left out

## What is counted of land under constraints.

measures-count-covered = covered
measures-count-not-buildable = may not be built upon
measures-count-not-in-site = not counted in the whole site
measures-count-not-in-buildable = not counted as buildable
measures-count-not-walkable = not to be walked across

## Kinds of open space.

measures-open-parks = parks
measures-open-squares = squares
measures-open-natural = natural land
measures-open-held-back = green land held back
measures-open-in-lots = planted in lots
measures-open-soft = parks in soft areas, roughly
measures-is-soft-park = whether a kind of open space is parks in soft areas

## Land of the site.

measures-land-part = use of land
measures-land-source = what gives land its use
measures-constraint-kind = what holds land back
measures-constraint-count = what is counted
measures-open-space-kind = kind of open space
measures-land-counted = land counted on the drawing
measures-land-bar = land by use
measures-site-area = site area
measures-land-bar-share = share of the site by use
measures-land-by-source = land by what gives it its use
measures-land-right-of-way = land in rights-of-way
measures-land-with-use = buildable land of blocks with a use
measures-land-of-places = buildable land of places
measures-land-of-soft = buildable land of soft areas
measures-land-without-use = buildable land without a use
measures-land-buildable = buildable land
measures-right-of-way-share = share of the site in rights-of-way
measures-land-constraints = land under constraints
measures-land-constraints-kind = land under constraints by kind
measures-held-back-kind = land held back by kind
measures-not-in-site-kind = land not counted in the whole site by kind
measures-not-in-buildable-kind = land not counted as buildable by kind
measures-not-walkable-kind = land not to be walked across by kind
measures-not-in-site = land not counted in the whole site
measures-not-in-buildable = land not counted as buildable
measures-open-drawn = open space drawn
measures-planted-share = share of a lot that is planted
measures-planted-type = planted land in lots by building type
measures-planted = planted land in lots
measures-is-planted = whether a kind of open space is land planted in lots
measures-open-space = open space by kind
measures-parks = land in parks
measures-squares = land in squares
measures-park-land = park land
measures-counted-site = land of the site
measures-counted-no-boundary = land within streets, since no site boundary is drawn
# A stretch of boundary from one way in to the next; $place is a way in.
measures-gap-from = from { $place }

## Streets and blocks.

measures-way-streets = streets
measures-way-alleys = alleys
measures-way-paths = paths
measures-legs-two = two, at a corner of two streets or a sharp bend
measures-legs-three = three
measures-legs-four = four or more
measures-front-cut-off = on streets that no way in reaches
measures-front-on-paths = on a path, where vehicles may come by an alley behind
measures-front-none = on no street
measures-way-kind = kind of way
measures-street-section = street section
measures-length-drawn = length drawn inside the site
measures-length-section = length by street section
measures-length-way = length of streets, alleys and paths
measures-length-streets = length of streets
measures-length-per-home = street length per home
measures-counting-rule = counting rule
measures-legs = how many links meet
measures-intersections-legs = intersections counted, by how many links meet
measures-heads = heads of dead ends counted
measures-links = links counted
measures-density-land = land that the rule divides its intersections by
measures-least-ratio = least link-node ratio the rule itself asks for
measures-intersections = intersections, by counting rule
measures-intersection-density = intersection density, by counting rule
measures-nodes = nodes counted: intersections and heads of dead ends, by counting rule
measures-link-node = link-node ratio, by counting rule
measures-link-node-least = link-node ratio by the least its own rule asks for: 1 or more passes
measures-connected-node = connected node ratio: intersections by nodes, by counting rule
measures-part = connected part
measures-part-nodes = nodes in each connected part (rule: links over nodes)
measures-part-links = links in each connected part (rule: links over nodes)
measures-parts = connected parts of the street network
measures-graph-nodes = nodes (rule: links over nodes)
measures-graph-links = links (rule: links over nodes)
measures-cycles = independent cycles
measures-beta = beta index (rule: links over nodes)
measures-alpha-index = alpha index, planar (rule: links over nodes)
measures-gamma-index = gamma index, planar (rule: links over nodes)
measures-dead-end-axis = dead end
measures-dead-end-lengths = length of each dead end
measures-dead-ends = dead ends
measures-dead-ends-length = length of all dead ends
measures-dead-end-longest = longest dead end
measures-way-in-axis = way in
measures-single-place = single street or crossing
measures-front-not-reached = why vehicles do not reach the front
measures-leading-in = streets and alleys that lead in at each way in
measures-streets-leading-in = streets that lead in at each way in, alleys aside
measures-homes-behind = homes that vehicles reach over one street or crossing alone: ways in, then those most homes hang on
measures-fronts-not-reached = homes whose front vehicles from outside do not reach, by why
measures-ways-in-out = ways in and out
measures-ways-over-streets = ways in and out over streets, alleys aside
measures-gap-axis = stretch of boundary between ways in
measures-gaps = boundary from each way in to the next
measures-gap-longest = longest stretch of boundary without a way in
measures-gap-total = boundary between ways in, all together
measures-gap-mean = boundary between ways in, mean
measures-gap-count = stretches of boundary between ways in
measures-most-behind = most homes behind a single street or crossing
measures-most-behind-share = share of homes behind a single street or crossing, at most
measures-homes-not-reached = homes whose front vehicles from outside do not reach
measures-fronting = what fronts
measures-frontage = street frontage by what fronts
measures-frontage-total = street frontage, both sides of streets
measures-frontage-share = share of street frontage by what fronts
measures-block = block
measures-perimeters = perimeter of each block with streets all round, along the right-of-way
measures-longest-sides = longest side of each block with streets all round, along the right-of-way
measures-blocks = blocks with streets all round
measures-perimeter-median = block perimeter, median
measures-perimeter-longest = block perimeter, longest
measures-perimeter-total = block perimeters together
measures-perimeter-mean = block perimeter, mean
measures-block-length-median = block length, median
measures-block-length-longest = block length, longest
measures-sun-streets = length of streets within 20° of east-west
measures-sun-blocks = blocks with an axis within 15° of east-west, at least as long along it as across
measures-sun-lots = lots with homes
measures-sun-lots-solar = lots with homes at least 75 ft deep with their front line within 30° of east-west
measures-sun-streets-share = share of street length that lies east-west
measures-sun-blocks-share = share of blocks that lie east-west
measures-sun-lots-share = share of lots with homes that have the sun

## Why nothing is counted of streets.

measures-no-way-in = no street inside the site meets a street outside, crosses the site's edge or ends at a site access
measures-no-heads = the rule counts intersections alone
measures-no-least = the rule asks for no least ratio
measures-none-way-in = no way in

## What may front on a street.

measures-fronts-homes = homes
measures-fronts-shops-work = shops and work
measures-fronts-civic = civic buildings
measures-fronts-green = green
measures-fronts-nothing = nothing

## How a number is worked out from a list.

measures-count-name = how many are listed
measures-count-words = Every line of the list counts one.
measures-count-some-name = how many of those listed are not zero
measures-count-some-words = Every line of the list that is not zero counts one.
measures-longest-name = the longest of those listed
measures-largest-words = The largest number of the list, the first of equal ones.
measures-most-name = the most of those listed
measures-median-name = median of those listed
measures-median-words = The number in the middle of the list when it is put in order; of an even number of them, half the sum of the 2 in the middle.
measures-alpha-name = alpha index, planar
measures-alpha-words = Independent cycles over the most that so many nodes can have where links meet at nodes only: 2 × nodes − 5. From three nodes on. 0 is a tree, 1 a net that no link can be added to.
measures-gamma-name = gamma index, planar
measures-gamma-words = Links over the most that so many nodes can have where links meet at nodes only: 3 × (nodes − 2). From three nodes on.
measures-nothing-listed = there is none
measures-one-list = one list gives one number
measures-two-numbers = two numbers give one
measures-few-nodes = there are fewer than three nodes
measures-list-lines = lines in the list
measures-list-lines-some = lines in the list that are not zero
measures-middle-one = in the middle: { $label }
measures-middle-two = in the middle: { $low } and { $high }
measures-most-cycles = the most cycles
measures-alpha = alpha
measures-most-links = the most links
measures-gamma = gamma

## What is missing on the drawing.

measures-no-boundary = no site boundary is drawn
# Between a street's name, or one of the words below, and where it is: "Mill Street at 12 m east, 8 m south". A list
# names hundreds of places with it.
measures-joint-at = {" "}at{" "}

## What a place on the streets is called where its street has no name.

measures-place-dead-end = dead end
measures-place-streets = streets
measures-place-street = street
measures-place-crossing = crossing
measures-place-way-in = way in
measures-place-front = front
measures-place-segment = segment

## Walking and mix in detail. A walk-shed is what is reached from a center within a time; directness is the length of
## a walk by the straight distance.

measures-best-center = best point for a center
measures-indirect-front = front with the least direct walks to a center
measures-busiest-segment = busiest segment
measures-shed-areas = area of the center's walk-shed
measures-shed-circles = circles around a center
measures-drawn-center = homes within 5 minutes of the center as drawn, at the plan's pace
measures-best-center-homes = homes within 5 minutes of the best point
measures-directness-homes = homes with a walk
measures-directness-sums = directness of homes, added up
measures-directness-most = directness that nine tenths of homes do not exceed
measures-indirect-fronts = mean directness of a front
measures-indirect-front-homes = homes of a front
measures-segment-walks = walks along a segment
measures-walked-length = length of segments by walks along them
measures-walked-busiest = length by walks along it, on the busiest tenth
measures-reached-homes = homes with floor area in reach
measures-reached-evenness = evenness of the floor area homes reach, added up
measures-needs-sums = homes by daily needs in reach, added up
measures-developed-cells = hectare cells with floor area
measures-unlike-neighbors = shares of unlike neighbors, added up
measures-shed-method = how the area is taken
measures-walk = walk
measures-shed-time = time of the walk
measures-shed-area = area of the center's walk-shed, by method
measures-shed-circle = circle of the same walking distance
measures-shed-ratio = walk-shed by its circle, by method
measures-directness-mean = length of the walk by the straight distance, mean over homes
measures-directness-90 = length of the walk by the straight distance that nine tenths of homes do not exceed
measures-worst-directness = least direct walks to a center, by front
measures-worst-directness-homes = homes with the least direct walks to a center
measures-best-5 = homes within 5 minutes of the best point for a center
measures-best-5-share = share of homes within 5 minutes of the best point for a center
measures-best-5-more = homes the best point has more than the center as drawn
measures-busiest-walks = walks along the busiest segment, one for each home and daily need
measures-busiest-tenth = share of walking along the busiest tenth of street length
measures-evenness-mean = evenness of the floor area a home reaches, mean over homes
measures-needs-mean = how many of the five daily needs a home reaches, mean over homes
measures-daily-need = daily need
measures-sure-need-homes = homes within a walk of each daily need, without what is hoped for
measures-sure-need-share = share of homes within a walk of each daily need, without what is hoped for
measures-dissimilarity = share of neighboring hectares of another use, mean over hectares
measures-none-point = no point
measures-none-segment = no segment
measures-none-front = no front
measures-nobody-walks = nobody walks to a daily need

## Walk-sheds, and why details can not be worked out.

measures-waiting = worked out once the drawing rests
measures-method-frontages = land of lots whose front is reached
measures-method-hull = hull of the reached streets
measures-method-buffer = band along the reached streets
measures-lots-too-far = the lots lie more than 20 km apart
measures-no-walks = no home has a walk of a meter or more to it
measures-band-width = the band's width is not between 0 and 1 km
measures-several-centers = several centers are drawn, and this is told of one alone

## Yardsticks: what as many people, or as much floor, have elsewhere.

measures-occupied-share = share of homes that are lived in
measures-parks-land-person = park land per person in the whole country
measures-people-park = people to each park in the whole country
measures-shops-floor-person = shop floor area per person in the whole country
measures-area-space = area per parking space, drives with it
measures-households = households: homes that are lived in
measures-in-households = people in homes that are lived in
measures-park-per-person = parks and squares drawn, per person
measures-park-elsewhere = park land that as many people have in the whole country
measures-park-elsewhere-share = parks and squares drawn, of the land as many people have in the whole country
measures-parks-elsewhere = parks that as many people have in the whole country
measures-shop-elsewhere = shop floor area that as many people have in the whole country
measures-shop-elsewhere-share = shop floor drawn, of the floor area as many people have in the whole country
measures-parking-land = land that parking on lots takes, none of it stacked
measures-parking-land-share = share of the land of lots with buildings that parking on them takes, none of it stacked
measures-parking-type-group = parking spaces on lots by building type and group of lots
measures-parking-group = parking spaces on lots by group of lots
measures-floor-type = floor area without parking, by building type
measures-floor-type-group = floor area without parking, by building type and group of lots
measures-floor-group = floor area without parking, by group of lots
measures-floor-per-space = floor area to each parking space, by group of lots
measures-school-site = site that an older guideline asks of one elementary school with the seats drawn
measures-school-site-share = land of lots with schools, of the site that an older guideline asks
measures-school-site-first = site of an elementary school, before its pupils
measures-school-site-seat = site of a school, for each pupil
measures-school-site-seats = site of a school, for the seats drawn

## What a town's rule allows on land that is held back in part.

measures-allowance-shares = share of land under constraints that the town's rule takes off, by kind
measures-allowed-by-land = homes by land that the town's rule allows
measures-standing-right-of-way = land of rights-of-way of streets that stand today and stay
measures-allowance-taken-kind = land that the town's rule takes off for constraints, by kind
measures-allowance-constrained = land that the town's rule takes off for constraints
measures-allowance-taken = land that the town's rule takes off for streets that stand and for constraints
measures-adjusted-land = land of the site that the town's rule counts homes on
measures-allowed-homes = homes that the town's rule allows
measures-whole-homes-name = whole homes on land
measures-whole-homes-words = The land times the homes to it, rounded down: a part of a home is none.
measures-whole-homes = whole homes
measures-no-allowed-homes = no homes by land are set for the town's rule

## Homes by how far people walk.

measures-mean-walk = mean length of a walk
measures-walk-distance = length of the walk, to the nearest eighth of a mile
measures-walks-as-long = share of all walks that are at least as long
measures-homes-at-distance = homes by length of the walk to each destination
measures-homes-likely-distance = homes, each by the share of walks at least as long as its own, by length of the walk
measures-homes-likely = homes, each by the share of walks at least as long as its own
measures-homes-likely-share = share of homes, each by the share of walks at least as long as its own

## What streets are like to walk along and across.

measures-grade = grade of the ground
measures-grade-20 = up to 1 in 20
measures-grade-12 = above 1 in 20, up to 1 in 12
measures-grade-steeper = above 1 in 12
measures-graded = length of streets, alleys and paths by grade of the ground along them
measures-length-grade = length of streets, alleys and paths by grade
measures-graded-total = length of streets, alleys and paths of known grade
measures-grade-share = share of the length of streets, alleys and paths by grade
measures-enclosed = street frontage along buildings at least two thirds as high as they are far from the centerline
measures-enclosed-share = share of street frontage that buildings enclose
measures-tree-lined = street frontage with trees between walk and traffic, 50 ft apart at most
measures-tree-lined-share = share of street frontage lined with trees
measures-carriageway = widest crossing of a street, from curb to curb
measures-crossing-speed = walking speed for signal timing
measures-crossing-check-speed = walking speed that a whole crossing is checked at
measures-push-button = from the push-button to the curb
measures-crossing-clearance = time a signal takes to clear the widest crossing
measures-crossing-length = widest crossing, from the push-button to the far side
measures-crossing-whole = time that the widest crossing takes from the push-button
measures-crossing-walk = time a signal at the widest crossing says walk
measures-no-street-inside = no street lies inside the site
measures-no-ground = the height of the ground is not known
