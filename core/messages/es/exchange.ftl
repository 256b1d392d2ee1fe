# Files: what can not be read in one, what was left out or mended, and what became of it.

## Plan files and journals that can not be opened at all.

exchange-too-large = el archivo es demasiado grande: { $bytes } bytes; se pueden leer como máximo { $most }
exchange-not-json = el archivo no es JSON: en la línea { $line }, columna { $column }, hay algo que no se puede leer: «{ $found }»
exchange-not-whole-json = el archivo no es JSON hasta el final: se interrumpe en la línea { $line }, columna { $column }
exchange-no-features = el archivo es JSON, pero no GeoJSON: no tiene elementos
exchange-no-version = el archivo de plan no dice de qué versión es (hobnail/version)
exchange-newer-version = el archivo de plan es de la versión { $version } y este programa lee hasta la versión { $newest }; ábralo con uno más reciente (el archivo no se modificó)
exchange-no-positions = el archivo no tiene posiciones para ubicar un plan
exchange-not-degrees = las posiciones del archivo no son longitudes y latitudes en grados, como pide GeoJSON; primero conviértalo a WGS84
exchange-journal-no-snapshot = el diario no tiene ninguna copia completa utilizable desde la cual comenzar
exchange-journal-no-line = no se pudo usar la línea { $line } del diario: no es una línea de diario o quedó cortada
exchange-journal-other-version = no se pudo usar la línea { $line } del diario: la escribió otra versión de este programa
exchange-journal-altered = no se pudo usar la línea { $line } del diario: fue alterada
exchange-journal-unreadable = no se pudo usar la línea { $line } del diario: dice algo que no puede ser

## What became of a drawing that is no plan file.

# The name of a plan made of one without a name.
exchange-opened-drawing = Dibujo abierto
exchange-became-streets = { $count ->
    [one] { $count } línea se convirtió en calle existente
   *[other] { $count } líneas se convirtieron en calles existentes
}
exchange-became-site = { $count ->
    [one] { $count } polígono se convirtió en el límite del sitio
   *[other] { $count } polígonos se convirtieron en el límite del sitio
}
exchange-became-parcels = { $count ->
    [one] { $count } polígono se convirtió en parcela
   *[other] { $count } polígonos se convirtieron en parcelas
}
exchange-became-notes = { $count ->
    [one] { $count } punto se convirtió en nota
   *[other] { $count } puntos se convirtieron en notas
}

## What is wrong in a plan file: where, then what. place is a JSON pointer or exchange-fault-top; a feature is one of
## GeoJSON.

exchange-fault-top = comienzo del archivo
exchange-fault-at = { $place }: { $what }
exchange-fault-in-feature = elemento { $feature }, { $place }: { $what }
exchange-fault-in-feature-id = elemento { $feature } (id { $id }), { $place }: { $what }

# expected and found are of the list below.
exchange-fault-expected = se esperaba { $expected }, se encontró { $found }
# name is a name in the file.
exchange-fault-missing = falta { $name }
exchange-fault-unknown-member = { $name } no se conoce y se dejó fuera
exchange-fault-repeated-member = { $name } aparece aquí dos veces; se usó la primera
exchange-fault-repeated-id = el id { $id } aparece aquí dos veces; se usó el primero
exchange-fault-unknown-kind = no se conocen elementos de la clase { $kind }; este se dejó fuera
# expected and found are geometries of the list below.
exchange-fault-geometry = necesita { $expected }, tiene { $found }; el elemento se dejó fuera
exchange-fault-not-a-position = no es una longitud y latitud en grados; el elemento se dejó fuera
exchange-fault-beyond-plan = está a más de 100 km del origen del plan; el elemento se dejó fuera
exchange-fault-holes = se dejaron fuera los huecos de los polígonos
exchange-fault-heights = se dejaron fuera las alturas de las posiciones
exchange-fault-origin = el origen del plan no se puede usar; se tomó el centro del dibujo
exchange-fault-id-given = no tiene un id utilizable; se le dio { $id }
exchange-fault-id-replaced = su id es el de un elemento anterior; se le dio { $id }
exchange-fault-alternative-added = la alternativa { $id } no estaba en la lista; se agregó
exchange-fault-tie-no-street = el vértice { $vertex } se soltó de la calle { $street }: no existe tal calle
exchange-fault-tie-no-place = el vértice { $vertex } se soltó de la calle { $street }: la calle no tiene tal lugar
exchange-fault-tie-circle = el vértice { $vertex } se soltó de la calle { $street }: cerraba un círculo de uniones
exchange-fault-second-site = el sitio ya tiene un límite; este se dejó fuera
exchange-fault-more = { $count ->
    [one] no se muestra { $count } error más de este archivo
   *[other] no se muestran { $count } errores más de este archivo
}

# Kinds of values in JSON, as in "expected a number, found text".
exchange-value-null = null
exchange-value-boolean = true o false
exchange-value-number = un número
exchange-value-text = texto
exchange-value-list = una lista
exchange-value-object = un objeto
exchange-value-list-of = una lista de { $count }
exchange-value-whole-number = un número entero
exchange-value-whole-number-within = un número entero de { $least } a { $most }
# words is a list of names in the file.
exchange-value-one-of = uno de { $words }
# text stands in its own quotation marks.
exchange-value-this-text = el texto { $text }
exchange-value-other-text = otro texto
exchange-value-base64 = bytes en base64 (RFC 4648, sección 4)
exchange-value-vertex-of = uno de los { $count } vértices de la línea, desde 0
exchange-value-vertex = el vértice { $index }
exchange-value-feature = un elemento
exchange-value-geometry = una geometría
exchange-value-geometry-kind = una clase de geometría de RFC 7946
exchange-value-position = una posición de dos números

# Kinds of geometry.
exchange-geometry-nothing = nada
exchange-geometry-point = un punto
exchange-geometry-line = una línea
exchange-geometry-polygon = un polígono
exchange-geometry-parts = varias partes
exchange-geometry-any = un punto, una línea o un polígono

## What is wrong in a file of bare lines or points; stands behind the feature and a colon.

exchange-feature = elemento { $index }
exchange-feature-id = elemento { $index } ({ $id })
exchange-lines-not-geojson = no es GeoJSON: no hay FeatureCollection con una lista de elementos, ni Feature, ni geometría
exchange-lines-not-a-feature = no es un elemento, se dejó fuera
exchange-lines-no-geometry = no tiene geometría, se dejó fuera
# found is a name in GeoJSON or exchange-lines-without-type, wanted one or two names.
exchange-lines-other-geometry = es { $found }, no { $wanted }; se dejó fuera
exchange-lines-without-type = geometría sin tipo
exchange-lines-two-kinds = { $first } o { $second }
# place is a path in the file, such as coordinates[3].
exchange-lines-not-positions = { $place } no es una lista de posiciones, se dejó fuera
exchange-lines-no-point = { $place } no son dos números; su lugar se dejó fuera
exchange-lines-no-vertex = { $place } no son dos números; su línea se dejó fuera
exchange-lines-short = { $place } tiene menos de dos posiciones, se dejó fuera
# name is that of a coordinate system or exchange-lines-unnamed-system.
exchange-lines-foreign-system = nombra el sistema de coordenadas { $name }, que no se toma en cuenta
exchange-lines-unnamed-system = sin nombre

## Plans in addresses: why one can not be opened or made, and what it is without.

exchange-address-empty = la dirección no contiene ningún plan: no hay nada después de su #
exchange-address-no-plan = la dirección no contiene ningún plan: lo que hay después de su # es otra cosa
exchange-address-newer = la dirección se hizo con una versión más nueva de este programa; ábrala con una más nueva
exchange-address-damaged = la dirección está dañada: se cortó o se cambió alguna letra; cópiela otra vez, de principio a fin
exchange-address-too-much = la dirección contiene más de lo que puede tener un plan
exchange-address-impossible = la dirección dice algo que no puede ser; no la hizo este programa
exchange-address-too-large = el plan es demasiado grande para una dirección; envíe el archivo del plan
exchange-address-leaves-heights = Las alturas del terreno no van en la dirección: quien la abra verá los tiempos a pie en terreno plano.
exchange-address-leaves-image = La imagen de base no va en la dirección: se queda aquí y en el archivo del plan.
exchange-address-leaves-history = Los pasos que se pueden deshacer no van en la dirección: se quedan aquí.
exchange-address-without-heights = El plan tenía alturas del terreno que no van en su dirección: los tiempos a pie son en terreno plano.
exchange-address-without-image = El plan tenía una imagen de base que no va en su dirección.
exchange-address-without-history = Los pasos que llevaron al plan no van en su dirección.
