## The tools of the rail, where a word has room for about nine letters.

tools-select = Select
tools-street = Street
tools-use = Use
tools-area = Area
tools-place = Place
tools-view = View
tools-view-awaits = Drag to move the drawing; turn the wheel or press + and − to zoom.

## What a step is called in the history; it follows "Undo:" and begins sentences of its own.

tools-step-draw-street = draw street
tools-step-draw-blocks = draw grid of blocks
tools-step-move-street = move street
tools-step-move-corner = move corner
tools-step-add-corner = add corner
tools-step-move-place = move place
tools-step-delete-street = delete street
tools-step-delete-corner = delete corner
tools-step-delete-place = delete place
tools-step-clear-use = clear use
tools-step-paint-type = paint { $name }
tools-step-paint-use = paint use
tools-step-soft-area = draw soft area
tools-step-constraint = draw constraint area
tools-step-parcel = draw parcel
tools-step-outside = draw outside context
tools-step-barrier = draw barrier
tools-step-site-access = place site access
tools-step-crossing = place crossing
tools-step-note = place note
tools-step-place = add place
tools-step-draw-site = draw site boundary
tools-step-move-site = change site boundary
tools-step-move-mark = move area or mark
tools-step-delete-mark = delete area or mark
tools-step-move-selection = move selection
tools-step-delete-selection = delete selection
tools-step-duplicate = duplicate
tools-step-turn = turn
tools-step-mirror = mirror
tools-step-cut = cut street
tools-step-join = join streets
tools-step-offset = offset street
tools-step-round = round corner

## What a tool waits for, below the drawing. A letter in parentheses is the key of a tool.

tools-site-first = Click the first corner of the site.
tools-site-done = The site is drawn; drag its corners to change it. Next: a center (P), soft areas and constraints here, or streets (S).
tools-soft-first = Click the first corner of the soft area, or press and drag for a bubble.
tools-area-first = Click the first corner of the outline.
tools-area-done = Drawn; name it and say more in the panel, or click the first corner of the next.
tools-line-first = Click where the barrier begins.
tools-corner-next = Click the next corner. Escape gives up.
tools-line-more = Click the next corner. Enter, or the last corner again, ends the line; Backspace takes a corner back.
tools-outline-more = Click the next corner. Enter, or the first corner again, closes the outline; Backspace takes a corner back.
tools-bubble = Drag until the bubble is as large as wanted, then let go.
tools-corner-held = Let go to put the corner down. Escape puts it back.

## The ways to draw streets, two beside each other: short words.

tools-straight = Point to point
tools-curve = Curve
tools-blocks = Grid of blocks
tools-tape = Tape

## What the place tool waits for.

tools-center = Click a street for a point, drag along it for a stretch, or click a block for a square. Elsewhere it stands where you click.
tools-place-first = Click where it is; drag along a street for a stretch.
tools-access = Click on the site boundary, best where a street crosses it.
tools-access-no-site = A site access stands on the site boundary: draw that first (A).
tools-crossing = Click on a street or barrier, best where they cross.
tools-note = Click where the note is pinned; then type what it says.
tools-square = Click to make this block its square.
tools-stretch = Drag along the street for a stretch, or let go.

## What the select tool waits for.

tools-select-resting = Click to select, Shift adds. Drag to move; on bare ground or with Shift, a box.
tools-select-boxing = Let go to select all that lies inside. Escape gives up.
tools-select-cutting = Click the street where it is cut. Escape gives up.
tools-select-pressed = Drag to move.
tools-select-carried = Move it, then Enter or click puts it down. Escape puts it back.
tools-select-moving = Let go to put it down. Escape puts it back.

## Said beside the pointer.

tools-cut-here = cut here
tools-length = { $length }
tools-radius = radius { $length }
tools-tape-length = total { $length }
tools-tape-area = total { $length }, area { $area }
# A grid of blocks: how many along and across, and their length and depth.
tools-grid = { $along } × { $across } blocks of { $length } by { $depth }
tools-grid-by-street = { $along } × { $across } blocks of { $length } by { $depth }, turned to a street
tools-grid-by-edge = { $along } × { $across } blocks of { $length } by { $depth }, turned to the site’s edge

## Commands on what is selected.

tools-duplicate = Duplicate
tools-turn-left = Turn left
tools-turn-right = Turn right
tools-mirror-sideways = Mirror sideways
tools-mirror-upright = Mirror up and down
tools-cut = Cut in two
tools-join = Join two streets
tools-offset-left = Offset left
tools-offset-right = Offset right

## Why a point lands where it does, beside the point.

tools-snap-intersection = intersection
tools-snap-street-end = street end
tools-snap-corner = corner
tools-snap-own-start = back to the start
tools-snap-on-street = on street
tools-snap-site = site boundary
tools-snap-edge = edge
tools-snap-extension = street goes on
tools-snap-straight-on = straight on
tools-snap-square = right angle
tools-snap-parallel = parallel to street
tools-snap-guides = guides cross
tools-snap-equal-block = equal block
tools-snap-typed = as typed
tools-snap-free = free

## What the street tool waits for.

tools-street-first = Click the first point.
tools-street-opposite = Click the opposite corner. Escape gives up.
tools-tape-next = Click the next point; Enter ends.
tools-street-next = Click the next point. Escape gives up.
tools-street-more = Click the next point; Enter or the last point again ends, Backspace takes one back.

## What the use tool waits for.

tools-use-painting = Sweep over more blocks, or let go.
tools-use-side = Click to paint this side. Alt paints the whole block.
tools-use-block = Click to paint this block. Near a street, one side of it is painted.
tools-use-resting = Click inside land that streets or the site boundary enclose.
