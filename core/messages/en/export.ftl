# Drawings for other programs: names of layers, and what stands around the drawing.

## Layers, for people. Uses of land and water have the words of the drawing.

export-layer-ground = land of the site
export-layer-second-use = second use
export-layer-soft-areas = soft areas, before any street
export-layer-constraints = what holds land back
export-layer-right-of-way = rights-of-way
export-layer-planting = planting strips
export-layer-curbs = carriageways between curbs
export-layer-lanes = lanes, bicycle lanes and medians
export-layer-center-lines = center lines
export-layer-removed = streets to be removed
export-layer-lots = lots
export-layer-buildings = buildings
export-layer-trees = street trees
export-layer-parcels = parcels
export-layer-barriers = what can not be crossed on foot
export-layer-site = site boundary
export-layer-accesses = connections to existing streets
export-layer-places = places
export-layer-contours = contours of the ground
export-layer-index-contours = contours of the ground, each fifth
export-layer-contour-heights = heights of contours
export-layer-names = names
export-layer-sheet = heading, scale, legend and note

## Around the drawing.

# The letter of the north arrow.
export-north = N
export-scale = Scale 1:{ $scale }
# feet and scale are numbers.
export-scale-feet = 1 inch = { $feet } feet (1:{ $scale })
export-note = A planning-level sketch, not for construction: lots and buildings are laid by rule, and fire access, drainage, slopes, sight lines, structures, traffic studies and water reuse are left to local codes and licensed practice.
# interval and spacing are numbers, unit the word for both; source is a sentence and may be empty.
export-contours-about = Contours of the ground every { $interval } { $unit }, each fifth heavier with its height in { $unit }. From a grid of heights with a point every { $spacing } { $unit }, not from a survey: drainage, grading and steep or unstable ground are for licensed practice. { $source }
# Above it stands what unit the drawing is in.
export-units-meters = One unit of this drawing is a meter on the plan's own plane, about the place named in the plan file.
export-units-feet = One unit of this drawing is an international foot on the plan's own plane, about the place named in the plan file.
