## Words on many buttons.

panels-delete = Delete
panels-save = Save
panels-show = Show
panels-draw = Draw
panels-show-what = Show on the drawing: { $what }

## The menu of alternatives.

panels-alternatives = Alternatives
panels-alternatives-files = Files of several tables, opened together, stand side by side here.
panels-alternatives-about = All ways to lay out the site, as small plans
panels-alternative-copy = Make a copy
panels-alternative-earlier = Move earlier

## The bar.

panels-history = History
panels-undo = Undo
panels-redo = Redo
panels-plan = Plan
panels-open = Open…
panels-samples = Samples
panels-units = Units
panels-units-us = Feet, acres
panels-units-metric = Metric

## The basis of a figure.

panels-basis-doubt = Where its doubt comes from
panels-basis-changed = Rests on changed factors: { $factors }
# A term of a weighted mean.
panels-basis-weighed = { $label }: { $value }, weight { $weight }
# Rows or terms that are not listed.
panels-basis-more = and { $count } more
panels-basis-zeros = zero in { $count } other places
panels-basis-rows = The other { $count } rows

## The column of figures.

panels-figures = Figures
panels-figures-note = every number opens its basis
panels-caution = Planning-level results from an invented or unfinished drawing. Fire access, drainage, slopes, sight lines, structures and traffic are for local codes and licensed practice.
panels-program = Program
# What is drawn next.
panels-next = Next: { $what }

## Read out by screen readers: what kind of thing the canvas is.

panels-drawing = drawing

## The editors.

panels-editor = Editor
panels-cut = Cut through the street
# Buttons that step a number.
panels-less = Less: { $what }
panels-more = More: { $what }

## Figures enlarged for the back of the room.

panels-enlarged = Enlarged figures
# An opened basis stays open while others are opened and closed.
panels-pin = Pin
panels-pin-what = Pin: { $what }
panels-enlarge = Enlarge for the room
panels-no-longer-enlarged = No longer enlarged: { $what }
# The unit beside a field.
panels-feet = ft

## What can be done with a phase.

panels-phase-earlier = Earlier

## The menu of the history.

panels-replay-stop = Stop
panels-replay = Replay
panels-history-back = What is drawn now takes the place of the steps after this one. Keep them as an alternative first if they are still wanted.
panels-history-begin = As it was opened
panels-moment-name = Compare with this moment, named
panels-moment-mark = Mark
panels-moment-forget = Stop comparing
panels-moment-compared = Compared with: { $name }.

## Ways to go on with a plan that this browser keeps no longer.

panels-keep-as-copy = Go on as a copy
panels-open-kept-again = Open what the other window kept

## What can be drawn.

panels-site = Site boundary
panels-soft-area = Soft area
panels-parcel = Parcel
panels-outside = Outside context
panels-site-access = Site access
panels-barrier = Barrier or fence
panels-crossing = Crossing
panels-note = Note
panels-land-bar = The land of the site

## The legend.

panels-legend = Legend
panels-legend-lots = Lots and buildings, from near
panels-legend-no-lot = Land in no lot

## How streets are drawn.

panels-block-length = Block length
panels-block-depth = Block depth
panels-about-blocks = From middle to middle of streets.
panels-snap = Snap (hold Alt to suspend)

## The map over the plan.

panels-map = Map over the plan
panels-map-walks = Walking time
panels-map-rules = Intersections counted

## What of the plan is measured.

panels-measured = Measured
panels-without-unwilling = Without land of unwilling owners
panels-settings = Settings
panels-measured-part = Every number here: { $what }.

## Notes on the plan.

panels-notes-open = Left open on the drawing
panels-notes-codes = For local codes and licensed practice

## The palettes.

panels-section = Street section
panels-section-edit = Edit this street section
panels-brush-nearest = Side when near, else block
panels-brush-whole = Whole block
panels-brush-side = One side
panels-paint = Paint
panels-building-type = Building type
panels-no-use = No use
panels-no-use-about = Clears what is there.
panels-building-type-edit = Edit this building type

## The menu of the plan.

panels-phase-add = Add a phase
panels-plan-about = Name, place and phases of the plan

## The card of the program.

panels-program-about = Type what is asked; leave empty what is not.
panels-program-asked = asked
panels-program-drawn = drawn
panels-program-left = left
panels-program-done = Done
panels-tools = Tools

## The panel of what is selected.

panels-selection = Selection
panels-radius = Corner radius
panels-turn-mirror = Turn, mirror
panels-turn-mirror-offset = Turn, mirror, offset
panels-turn-by = Turn by
panels-offset-by = Offset by
panels-move = Move
panels-selection-about = Arrow keys move it a little, with Shift farther. Shift and a click add to it.
panels-radius-most = Up to { $length } fits here.
# The key of the keyboard that deletes.
panels-key-delete = Delete

## The line below the drawing.

panels-by-keys = Arrow keys move the point, Enter sets it.
panels-zoom = Zoom
panels-zoom-out = Zoom out
panels-zoom-fit = Fit
panels-zoom-in = Zoom in

## Fields for the next run of a street.

panels-typed-length = Length
panels-typed-length-about = Length of the next run. Enter sets the point, Escape clears.
panels-typed-bearing = Bearing
panels-typed-bearing-about = Degrees clockwise from north; with + or −, from the run before.
panels-typed = Next run

## Ways to begin.

panels-begin-site = The site
panels-begin-site-about = Draw its boundary; then a center, soft areas and what holds land back.
panels-begin-streets = Streets
panels-begin-streets-about = Draw the first street at once; the boundary can follow.
panels-begin = Begin with
panels-begin-samples = Or look at
panels-begin-blank = A blank sheet
panels-begin-program = The program…
panels-begin-file = A file of your own…

## Plans that this browser keeps.

panels-forget-for-good = Forget for good
panels-forget = Forget…
panels-keep = Keep
panels-go-on = Go on with
panels-forget-plan = Forget { $name }
panels-lasting = This browser keeps them until you remove them.
panels-not-lasting = When room runs short, this browser may drop them.
panels-ask-to-last = Ask it to keep them
