# Files: what can not be read in one, what was left out or mended, and what became of it.

## Plan files and journals that can not be opened at all.

exchange-too-large = the file is too large: { $bytes } bytes, at most { $most } can be read
exchange-not-json = the file is not JSON: in line { $line }, column { $column } something can not be read: “{ $found }”
exchange-not-whole-json = the file is not JSON to its end: it breaks off in line { $line }, column { $column }
exchange-no-features = the file is JSON, but not GeoJSON: it has no features
exchange-no-version = the plan file does not say which version it is (hobnail/version)
exchange-newer-version = the plan file is of version { $version }, and this program reads up to version { $newest }; open it with a newer one (the file was not changed)
exchange-no-positions = the file has no positions to place a plan by
exchange-not-degrees = the file's positions are not longitudes and latitudes in degrees, as GeoJSON has them; convert it to WGS84 first
exchange-journal-no-snapshot = the journal has no usable snapshot to begin from
exchange-journal-no-line = line { $line } of the journal could not be used: it is no journal line or was cut short
exchange-journal-other-version = line { $line } of the journal could not be used: it was written by another version of this program
exchange-journal-altered = line { $line } of the journal could not be used: it was altered
exchange-journal-unreadable = line { $line } of the journal could not be used: it says something that can not be

## What became of a drawing that is no plan file.

# The name of a plan made of one without a name.
exchange-opened-drawing = Opened drawing
exchange-became-streets = { $count ->
    [one] { $count } line became an existing street
   *[other] { $count } lines became existing streets
}
exchange-became-site = { $count ->
    [one] { $count } polygon became the site's boundary
   *[other] { $count } polygons became the site's boundary
}
exchange-became-parcels = { $count ->
    [one] { $count } polygon became a parcel
   *[other] { $count } polygons became parcels
}
exchange-became-notes = { $count ->
    [one] { $count } point became a note
   *[other] { $count } points became notes
}

## What is wrong in a plan file: where, then what. place is a JSON pointer or exchange-fault-top; a feature is one of
## GeoJSON.

exchange-fault-top = top of the file
exchange-fault-at = { $place }: { $what }
exchange-fault-in-feature = feature { $feature }, { $place }: { $what }
exchange-fault-in-feature-id = feature { $feature } (id { $id }), { $place }: { $what }

# expected and found are of the list below.
exchange-fault-expected = expected { $expected }, found { $found }
# name is a name in the file.
exchange-fault-missing = { $name } is missing
exchange-fault-unknown-member = { $name } is not known and was left out
exchange-fault-repeated-member = { $name } stands here twice; the first was used
exchange-fault-repeated-id = id { $id } stands here twice; the first was used
exchange-fault-unknown-kind = features of kind { $kind } are not known; this one was left out
# expected and found are geometries of the list below.
exchange-fault-geometry = needs { $expected }, has { $found }; the feature was left out
exchange-fault-not-a-position = not a longitude and latitude in degrees; the feature was left out
exchange-fault-beyond-plan = lies more than 100 km from the plan's origin; the feature was left out
exchange-fault-holes = holes of polygons were left out
exchange-fault-heights = heights of positions were left out
exchange-fault-origin = the plan's origin is not usable; the middle of the drawing was taken
exchange-fault-id-given = has no usable id; it was given { $id }
exchange-fault-id-replaced = its id is an earlier feature's; it was given { $id }
exchange-fault-alternative-added = alternative { $id } was not listed; it was added
exchange-fault-tie-no-street = vertex { $vertex } was let go of street { $street }: there is no such street
exchange-fault-tie-no-place = vertex { $vertex } was let go of street { $street }: the street has no such place
exchange-fault-tie-circle = vertex { $vertex } was let go of street { $street }: it closed a circle of ties
exchange-fault-second-site = the site has a boundary already; this one was left out
exchange-fault-more = { $count ->
    [one] { $count } more fault of this file is not listed
   *[other] { $count } more faults of this file are not listed
}

# Kinds of values in JSON, as in "expected a number, found text".
exchange-value-null = null
exchange-value-boolean = true or false
exchange-value-number = a number
exchange-value-text = text
exchange-value-list = a list
exchange-value-object = an object
exchange-value-list-of = a list of { $count }
exchange-value-whole-number = a whole number
exchange-value-whole-number-within = a whole number from { $least } to { $most }
# words is a list of names in the file.
exchange-value-one-of = one of { $words }
# text stands in its own quotation marks.
exchange-value-this-text = text { $text }
exchange-value-other-text = other text
exchange-value-base64 = bytes in base64 (RFC 4648, section 4)
exchange-value-vertex-of = one of the line's { $count } vertices, from 0
exchange-value-vertex = vertex { $index }
exchange-value-feature = a feature
exchange-value-geometry = a geometry
exchange-value-geometry-kind = a kind of geometry of RFC 7946
exchange-value-position = a position of two numbers

# Kinds of geometry.
exchange-geometry-nothing = nothing
exchange-geometry-point = a point
exchange-geometry-line = a line
exchange-geometry-polygon = a polygon
exchange-geometry-parts = several parts
exchange-geometry-any = a point, a line or a polygon

## What is wrong in a file of bare lines or points; stands behind the feature and a colon.

exchange-feature = feature { $index }
exchange-feature-id = feature { $index } ({ $id })
exchange-lines-not-geojson = not GeoJSON: no FeatureCollection with a list of features, Feature or geometry
exchange-lines-not-a-feature = not a feature, left out
exchange-lines-no-geometry = has no geometry, left out
# found is a name in GeoJSON or exchange-lines-without-type, wanted one or two names.
exchange-lines-other-geometry = is a { $found }, not a { $wanted }, left out
exchange-lines-without-type = geometry without a type
exchange-lines-two-kinds = { $first } or { $second }
# place is a path in the file, such as coordinates[3].
exchange-lines-not-positions = { $place } is not a list of positions, left out
exchange-lines-no-point = { $place } is not two numbers, its place left out
exchange-lines-no-vertex = { $place } is not two numbers, its line left out
exchange-lines-short = { $place } has fewer than two positions, left out
# name is that of a coordinate system or exchange-lines-unnamed-system.
exchange-lines-foreign-system = names the coordinate system { $name }, which is not looked at
exchange-lines-unnamed-system = without a name

## Plans in addresses: why one can not be opened or made, and what it is without.

exchange-address-empty = the address holds no plan: nothing stands behind its #
exchange-address-no-plan = the address holds no plan: what stands behind its # is something else
exchange-address-newer = the address was made by a newer version of this program; open it with a newer one
exchange-address-damaged = the address is damaged: it was cut short or a letter was changed; copy it anew, from beginning to end
exchange-address-too-much = the address holds more than a plan may
exchange-address-impossible = the address says something that can not be; it was not made by this program
exchange-address-too-large = the plan is too large for an address; send the plan file instead
exchange-address-leaves-heights = Ground heights are not in the address: whoever opens it sees walking times on the flat.
exchange-address-leaves-image = The base image is not in the address: it stays here and in the plan file.
exchange-address-leaves-history = The steps that can be undone are not in the address: they stay here.
exchange-address-without-heights = The plan had ground heights that are not in its address: walking times are those on the flat.
exchange-address-without-image = The plan had a base image that is not in its address.
exchange-address-without-history = The steps that led to the plan are not in its address.
