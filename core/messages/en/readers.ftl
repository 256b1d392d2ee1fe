# What is said when a file of base data can not be read, or only in part. The readers name these messages; each fault is
# shown with its place, in a column of its own.

readers-empty = The file is empty.
readers-unknown-format = This is none of the formats that can be read: OpenStreetMap, GeoJSON, shapefiles in a zip, DXF, tables with coordinates, GeoTIFF, ASCII grids, HGT or world files.
readers-broken = The file is damaged or not what it says it is: { $detail }
readers-not-utf8 = The text is not in UTF-8. Save it again in that encoding.
readers-too-many-positions = The file holds more than { $limit } points. Choose a smaller area or fewer layers.
readers-too-many-cells = The grid has more than { $limit } cells within the area. Choose a smaller area.
readers-too-many-bytes = The file expands to more than { $limit } bytes.
readers-no-system = The file does not say which coordinate system it is in. Choose one.
readers-no-place = The file does not say which coordinate system it is in. Type one below; or type local, and what it holds is placed by hand, like a drawing whose place on Earth is not known.
readers-unknown-system = The coordinate system “{ $system }” is not known here. Choose another, or save the file in longitude and latitude.
readers-uncertain-datum = How the coordinate system “{ $system }” lies to WGS84 is not known: everything may be off by up to 200 m.
readers-off-earth = A position is not on Earth, too far away, or beyond what the projection can say. What has it was left out.
readers-missing-file = { $name } is missing.
readers-open-ring = An outline does not close with what the file holds. The area was left out, or a part of it.
readers-missing-points =
    { $count ->
        [one] One point that this refers to is not in the file. The line has a gap there.
       *[other] { $count } points that this refers to are not in the file. The line has gaps there.
    }
readers-not-read =
    { $count ->
        [one] One { $kind } was not read.
       *[other] { $count } things of the kind { $kind } were not read.
    }
readers-fitted-splines =
    { $count ->
        [one] One curve is given only by points that it passes through. It meets all of them; between them it runs as this reader lays it, which may differ a little from the program that drew it.
       *[other] { $count } curves are given only by points that they pass through. They meet all of them; between them they run as this reader lays them, which may differ a little from the program that drew them.
    }
readers-too-deep = The block “{ $name }” lies too deep within others, or within itself. It was left out there.
readers-no-coordinates = No columns with coordinates were recognized. Name the columns.
readers-not-a-number = “{ $value }” is not a number.
readers-too-few-values = The grid announces { $expected } values and has { $found }. The rest is without heights.
readers-no-heights = This TIFF holds colors and no heights, and browsers show no TIFF. To lay it under the drawing, save it as PNG or JPEG with a world file, and choose both together.
readers-picture-apart = A world file only says where a picture lies. Choose or drop it together with the picture, both under the same name, such as map.jpg and map.jgw, and not in a zip.
readers-unnamed-corner = The name of an HGT file must say where it lies, like N42W072.hgt.
readers-no-unit = The file does not say its unit of length. Meters were taken.
# columns are the file's own names of them, such as AADT_2022, parted by commas.
readers-traffic-counts = Columns that count traffic: { $columns }. Each count becomes a note where it stands, the newest year where there are several; what is a street, a place or the like by its other columns stays that. Notes are words on the drawing, which no figure counts. What traffic means for streets and crossings is for traffic studies by licensed practice.
# columns as above, such as ZONING.
readers-zones = Columns that say zones or land uses: { $columns }. Each area gets a note of its code unless you choose otherwise, but parcels get none; notes are counted in no figure. As a soft area it shows very roughly what its land might hold by the building type that you choose, which is not what the zone allows: only the local code and those who administer it say that.
readers-too-many-zones = Only the first { $limit } codes of zones or land uses are told apart; all others of a column are one kind.
readers-nothing-within = Nothing of the file lies within the area.
readers-more-faults =
    { $count ->
        [one] There is one more fault.
       *[other] There are { $count } more faults.
    }

readers-place-file = Whole file
readers-place-byte = Byte { $number }
readers-place-line = Line { $number }
readers-place-record = Record { $number } of { $layer }
readers-place-named = { $name }
