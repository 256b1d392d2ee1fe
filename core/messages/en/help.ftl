# Help by tool, and the first steps. Each line stands on a line of its own; letters in parentheses are keys of tools.

help-open = Help
help-close = Close
help-licenses = Licenses
help-first-title = Three steps to begin
help-first =
    1. Draw the site’s boundary or its streets: click point by point, Enter ends.
    2. Give the land between streets a use (U) and the place a center (P). The figures beside the drawing follow each stroke.
    3. Press a number to see how it was worked out; point at it to see on the drawing what it counted. Help says more about the tool in hand.
help-select =
    Click what is drawn to select it; with Shift, or by a box on empty ground, select more.
    Drag a corner or the whole, a street that stands today once it is selected; a dot in the middle of a run becomes a corner.
    The card beside the rail moves, turns, mirrors, sets off, cuts and joins what is selected, and gives all of it one street section or phase.
    The arrow keys move it a little, with Shift farther. Delete deletes it; undo brings it back.
help-area =
    Choose what the outline is: the site, a soft area, land that something holds back, a parcel, what lies outside.
    Click corner by corner; Enter or the first corner closes it, Backspace takes a corner back.
    A soft area may also be pulled open like a bubble: rough homes are counted before any street exists.
help-street =
    Choose a street section, then click point by point; Enter ends, Backspace takes a point back.
    The point lands on streets, corners, right angles and equal blocks, and says why; hold Alt to place it freely.
    Type a length or an angle for the next run. Curve bends it, Grid of blocks draws many streets at once, Tape only measures.
help-use =
    Choose a building type, then click land enclosed by streets: lots and buildings are laid at once. Sweep to paint several blocks.
    Click near one side of a block to give that side alone a type of its own.
    Open the editor of a block for portions, stories, setbacks and shopfronts.
help-place =
    Choose what the place is, then click: a point, a stretch of street, or a whole block for a square.
    A place counts for the daily needs once it is as large as a need asks; Settings says how large.
    A fence, drawn point by point, may ask of the lots beside it how many stories they have at most.
    A remark is pinned the same way; then type what it says, until Enter, with Shift and Enter for a new line. Below the figures it is listed with its table and dots, and linked to the steps that answer it.
help-view =
    Drag to move the drawing; the wheel, two fingers, + and − zoom; 0 shows all of it.
    Once a pen has drawn in this window, a finger moves the drawing whatever tool is in hand.
    The map over the plan shows walking time, needs, routes, density, phases and more, one at a time.
