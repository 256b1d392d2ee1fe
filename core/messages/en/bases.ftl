# Base data: files of streets, land and buildings that others made. What is said while one is read, looked at and taken
# into the plan.

bases-title = Base data
bases-begin = Base data
bases-about = Take streets, buildings, parcels, places, zones and counts of traffic as they stand from a file: OpenStreetMap, GeoJSON, shapefiles, DXF or a table; and heights of the ground from a GeoTIFF, ASCII or HGT grid
bases-choose = Open a file of base data…
bases-reading = Reading { $file }…
bases-progress = Share of the file that is read
bases-refused = Nothing of { $file } could be read. The plan stays as it is.
bases-read = { $count ->
    [0] { $file } is read. It holds nothing that can be drawn.
    [one] { $file } is read. It holds one thing.
   *[other] { $file } is read. It holds { $count } things.
}
bases-cancel = Cancel
bases-close = Close
bases-take = Take into the plan
bases-faults = What could not be read, and what to know
# Reading the same file in another way.
bases-again = Read it another way
bases-again-about = Where the file does not say its coordinate system, or says a wrong one, type it: as EPSG:26986, a PROJ string or well-known text. Type local where it has none on Earth, to place lines, areas, points and ASCII grids of heights by hand.
bases-again-system = Coordinate system
bases-again-x = Column of x or longitude
bases-again-y = Column of y or latitude
bases-again-read = Read again

## What the file holds.

bases-credit = To be named
bases-system = Coordinates
bases-system-none = Of its own; where on Earth it lies is not said
bases-system-degrees = Longitude and latitude, WGS84
bases-unit = Unit
bases-unit-degrees = Degrees
bases-unit-meters = Meters
bases-unit-feet = International feet
bases-unit-survey-feet = US survey feet
bases-unit-other = A unit of its own
bases-size = Extent
bases-extent = { $wide } west to east, { $high } south to north
bases-layers = Layers
# Layers of OpenStreetMap.
bases-layer-streets = Streets
bases-layer-places = Places
bases-layer-areas = Land held back
bases-layer-barriers = Barriers
bases-layer-buildings = Buildings
# The layer of whatever OpenStreetMap has and a plan does not.
bases-layer-other = Other things
bases-classes = What it becomes
bases-in-file = In the file
bases-count = Count
bases-becomes = Becomes
# Before a list that gives one meaning to all; its first line is bases-as-chosen.
bases-all-at-once = All of them become
bases-as-chosen = as chosen below
bases-becomes-of = What { $name } becomes
bases-becomes-nothing = Left out
# Within the site land that is kept as it is, outside of it context.
bases-becomes-building = Building as it stands
bases-becomes-parcel = Parcel, owner: { $owner }
# A bubble of this building type before any street is drawn; what it yields is rough.
bases-becomes-soft = Soft area, roughly: { $use }
bases-show-all = Show all { $count } kinds

## Where it comes to lie, and how much of it is taken.

bases-place = How much, and where
bases-place-fixed = The plan lies somewhere already; its origin stays there.
bases-place-new = The plan lies nowhere yet. Its origin is put here, and stays.
bases-place-drawing = The file does not say where it lies. Its middle is put at the plan’s origin unless you type otherwise.
bases-extent-field = Take what lies
bases-extent-site = in the box around the site
bases-extent-within = only in the site itself
bases-extent-around = around the plan’s origin
bases-margin = And beyond by
bases-radius = To each side of the origin
bases-longitude = Longitude of the origin
bases-latitude = Latitude of the origin
bases-drawing-unit = One unit of the file
bases-zero-east = Zero of the file, east
bases-zero-north = Zero of the file, north
bases-turn = Turned counterclockwise
bases-field-wrong = A field holds nothing that can be used.

## What would be taken.

# How many of the file's things would be taken; percent is rounded down.
bases-share = { $percent ->
    [0] { $taken } of the { $count } things in the file would be taken, less than 1 %.
    [100] { $count ->
        [one] The one thing in the file would be taken: all of it.
       *[other] All { $count } things in the file would be taken: the whole of it.
    }
   *[other] { $taken } of the { $count } things in the file would be taken: { $percent } %.
}
bases-would-take = Would be taken:
bases-sketch = What would be taken, as a small plan
# Behind a number, such as “12 streets”.
bases-kind = { $kind ->
    [site] site boundary
    [streets] { $count ->
        [one] street
       *[other] streets
    }
    [places] { $count ->
        [one] place
       *[other] places
    }
    [areas] { $count ->
        [one] area of land held back
       *[other] areas of land held back
    }
    [barriers] { $count ->
        [one] barrier
       *[other] barriers
    }
    [buildings] { $count ->
        [one] building
       *[other] buildings
    }
    [notes] { $count ->
        [one] note
       *[other] notes
    }
    [soft] { $count ->
        [one] rough soft area
       *[other] rough soft areas
    }
    [heights] { $count ->
        [one] height of the ground
       *[other] heights of the ground
    }
   *[parcels] { $count ->
        [one] parcel
       *[other] parcels
    }
}
bases-left-unchosen = { $count ->
    [one] One thing is left out as chosen.
   *[other] { $count } things are left out as chosen.
}
bases-left-beyond = { $count ->
    [one] One thing lies beyond the area.
   *[other] { $count } things lie beyond the area.
}
bases-left-unfitting = { $count ->
    [one] One thing has another shape than what it is to become.
   *[other] { $count } things have another shape than what they are to become.
}
bases-left-known = { $count ->
    [one] One thing is in the plan already.
   *[other] { $count } things are in the plan already.
}
bases-left-holes = { $count ->
    [one] One hole is filled, since outlines of a plan have none.
   *[other] { $count } holes are filled, since outlines of a plan have none.
}

## When it is taken, and why it can not be.

bases-step = take base data
# list holds numbers with bases-kind behind each, parted by commas.
bases-taken = Taken from { $file }: { $list }.
bases-no-extent = The distance must be a number from 0 to { $kilometers } km.
bases-no-site = No site is drawn yet. Choose a distance around the plan’s origin instead.
bases-no-unit = The unit must be more than 0 meters, and the turn a number of degrees.
bases-placed = The plan already lies somewhere. Its origin stays where it is.
bases-nothing-chosen = Nothing is chosen that could be taken. Choose layers, and what they become.
bases-nothing-within =
    { $count ->
        [one] The one thing that is chosen lies outside the area, or too far from the plan.
       *[other] All { $count } things that are chosen lie outside the area, or too far from the plan.
    }
bases-all-known =
    { $count ->
        [one] The plan has the one thing that is chosen already.
       *[other] The plan has all { $count } things that are chosen already.
    }
bases-too-many = More than { $limit } things would be taken, more than a plan can be drawn with. Choose a smaller area or fewer layers.
bases-old-module = The part of the page that reads base data is of another version. Reload the page.
bases-no-worker = The browser starts no worker, which reading base data needs.
bases-stopped = Reading stopped: { $fault }
