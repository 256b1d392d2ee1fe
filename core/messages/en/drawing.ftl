## Words painted on the drawing: keep them short.

drawing-quarter-mile = quarter mile, 1,320 ft
drawing-outside = Outside
drawing-note = Note
drawing-outside-homes = { $count } homes
drawing-outside-jobs = { $count } jobs
# Units beside the scale bar.
drawing-miles = mi
drawing-feet = ft

## Kinds of places, where they have no name of their own.

drawing-center = Center
drawing-transit-stop = Transit stop
drawing-school = School
drawing-community-hall = Community hall
drawing-park = Park
drawing-shop = Shop
drawing-clinic = Clinic

## The best point for a center, and minutes of walking.

drawing-best-point = best point
drawing-minutes = { $count } min

## Uses of land, on the drawing and in the legend.

drawing-use-homes = homes
drawing-use-business = business
drawing-use-making = making
drawing-use-civic = civic
drawing-use-park = park
drawing-use-natural = natural land

## What holds land back.

drawing-water = Water
drawing-floodplain = Floodplain
drawing-wetland = Wetland
drawing-steep = Steep land
drawing-easement = Easement
drawing-conservation = Conservation
drawing-contaminated = Contaminated
drawing-keep = Kept as it is

## Groups of owners of a parcel.

drawing-owner-public = Public
drawing-owner-willing = Willing
drawing-owner-unknown = Not asked
drawing-owner-unwilling = Unwilling
# The main building type of a block, and how many others are mixed in.
drawing-land-more = { $name } and { $count } more
drawing-stories-beside = { $count ->
    [one] { $count } story at most beside it
   *[other] { $count } stories at most beside it
}
