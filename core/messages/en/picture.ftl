# A picture under the drawing (the base image): a survey, an aerial view, a photograph of a paper map.

picture-title = Picture under the drawing
picture-choose = Lay a picture under the drawing
picture-another = Another picture
picture-remove = Take it away
picture-fade = How much it shows
picture-by-points = Lay it by points
picture-by-length = Set a known length
picture-done = Done
picture-back = Leave it as it was
picture-length-field = Length between the two points
picture-begin = Trace a picture
picture-begin-about = Lay a survey, an aerial view or a photographed map under the drawing
picture-first-place = Press a place on the picture that you know on the plan.
picture-next-place = { $count ->
    [one] Shifted by one pair of points. Press a second place to turn and scale the picture, or press Done.
    [2] Laid by two pairs of points. A third stretches the picture, a fourth straightens a photograph; or press Done.
    [3] Laid by three pairs of points. A fourth straightens a photograph; or press Done.
   *[other] Laid by { $count } pairs of points. Press Done.
}
picture-where = Now press where that place lies on the plan.
picture-length-from = Press one end of a length that you know.
picture-length-to = Press its other end.
picture-length = Type how long it is.
picture-no-length = Press the two ends of a length, then type it as a number such as 120.
# world is the name of the world file; moved is yes where the plan had no origin.
picture-laid = { $moved ->
    [yes] { $file } lies where { $world } says. The plan lay nowhere on Earth yet; its origin is now in the middle of the picture.
   *[no] { $file } lies where { $world } says.
}
picture-far = { $file } would lie more than { $kilometers } km from the plan, or be larger than a plan can be. Where the plan lies and the coordinate system of the picture do not fit each other.
picture-not-read = { $file } is no picture that this browser can show; PNG, JPEG and WebP are. Of a PDF, save the page as a picture first.
picture-not-shown = The picture under the drawing can not be shown by this browser; it stays in the plan.
# Labels of steps of the history.
picture-step-lay = lay picture
picture-step-remove = take picture away
picture-step-fade = fade picture
picture-step-place = place picture
