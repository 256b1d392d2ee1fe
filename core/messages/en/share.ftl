# Handing a plan on: in an address, as a code for cameras, with the page in one file.

share-open = Share
share-address = Address of this plan
share-address-length = { $count ->
    [one] The whole plan is in this address of one character; opening it asks no server for the plan.
   *[other] The whole plan is in this address of { $count } characters; opening it asks no server for the plan.
}
share-no-address = This page was opened from disk and was not told where it is published, so it can make no address that others could open. Save the page with the plan inside instead: one file is both the tool and the plan.
share-left-out = Not in the address:
share-copy = Copy the address
share-hand-on = Send
share-save-page = Save the page with this plan
share-copied = The address is copied.
share-not-copied = The browser does not let this page copy; choose the address above and copy it yourself.
share-not-handed-on = The address was not sent.
share-code = Code of the address, for cameras
share-code-large = Show the code large
share-no-code = The address is too long for a code that a room can read; hand on the address, or save the plan as a file.
share-close = Close
share-no-page = The page is not in one file, so it can not be saved with a plan inside.
share-this-file = The plan in this file
share-files = Files for other programs
share-scale = Scale of drawings
share-scale-feet = 1 inch : { $feet } feet
share-svg = Drawing, SVG
share-dxf = Drawing, DXF
share-png-150 = Picture, 150 dots per inch
share-png-300 = Picture, 300 dots per inch
share-geojson = All that is derived, GeoJSON
share-csv = All figures, CSV
share-png-too-large = The picture is larger than this browser can make; choose a smaller scale or fewer dots per inch.
