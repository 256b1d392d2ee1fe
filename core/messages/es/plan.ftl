# Plans: where points lie, what a new plan begins with, what part of a plan is looked at, and what is wrong with one.

## Where a point lies about the plan's origin. Code writes "12 m east, 8 m south" or, in US
## customary units, "41 ft east, 25 ft south": the number before each.

plan-meters-east = m al este
plan-meters-west = m al oeste
plan-meters-north = m al norte
plan-meters-south = m al sur
plan-feet-east = pies al este
plan-feet-west = pies al oeste
plan-feet-north = pies al norte
plan-feet-south = pies al sur

## What a new plan begins with. These names become part of the plan; people may change them.

plan-alternative-numbered = Alternativa { $number }

# Building types.
plan-type-detached-small = Casa independiente, lote pequeño
plan-type-detached-large = Casa independiente, lote grande
plan-type-two-family = Casa para dos familias
plan-type-attached = Casa adosada
# Cottages about a shared green.
plan-type-cottage-court = Casitas en torno a un patio común
plan-type-apartments = Edificio de apartamentos
# Walk-up buildings in a parking lot, as conventional subdivisions have them.
plan-type-garden-apartments = Conjunto de apartamentos con jardines
plan-type-homes-above-shops = Viviendas sobre comercios
plan-type-corner-store = Tienda de esquina con vivienda arriba
plan-type-workshop = Taller y oficina
# A supermarket in a row of shops behind its parking lot.
plan-type-supermarket = Supermercado con locales en hilera
plan-type-school = Escuela
plan-type-hall = Salón comunitario
plan-type-park = Parque
# Open space, paved.
plan-type-square = Plaza
plan-type-farm = Campo o bosque que se deja como está

# Street sections.
plan-section-main-street = Calle principal
plan-section-boulevard = Bulevar
plan-section-neighborhood-street = Calle de barrio
plan-section-narrow-street = Calle angosta
# Narrower still than the narrow street, with sidewalks and with lots on both sides, at 10 miles an hour.
plan-section-lane = Callejuela
# Behind lots.
plan-section-alley = Callejón
plan-section-path = Sendero
plan-section-path-homes = Sendero con viviendas al frente
plan-section-subdivision-street = Calle de subdivisión
plan-section-collector = Vía colectora
plan-section-arterial = Vía arterial
plan-section-state-highway = Carretera estatal

## What part of a plan is looked at; stands behind the name of an alternative, parts joined by commas.

plan-scope-today = tal como está hoy
plan-scope-no-phase = ninguna etapa
plan-scope-one-phase = solo la etapa { $name }
plan-scope-phases = etapas { $names }
plan-scope-without = sin el suelo de propietarios { $groups }
plan-scope-two-groups = { $first } y { $second }
# Groups of owners, as in "without land of unwilling owners": by what they think of the plan.
plan-owners-public = públicos
plan-owners-willing = dispuestos
plan-owners-unknown = sin consultar
plan-owners-unwilling = no dispuestos

## Why a change to a plan was refused or its journal could not be followed.

# cell is a place in the program's own notation.
plan-edit-stale = el plan ha cambiado desde que se hizo esta edición (en { $cell })
plan-edit-no-alternative = no hay alternativa { $id }
plan-history-gesture-open = todavía hay un gesto en curso
plan-history-locked = el plan está abierto solo para verlo y queda como está
plan-history-no-gesture = no hay ningún gesto en curso
plan-history-not-storable = un punto está a más de 100 km del origen del plan, o un número no es finito (en { $cell })
plan-history-last-alternative = no se puede quitar la última alternativa
plan-history-not-in-memory = primero hay que leer del diario el paso { $number }
plan-history-not-a-step = la entrada { $number } no es un paso del historial de este plan
plan-tie-to-itself = la calle { $street } no se puede unir a sí misma
# streets is a chain of numbers made of plan-tie-from-to.
plan-tie-circle = las calles quedarían unidas en círculo unas a otras: { $streets }
plan-tie-from-to = { $from } a { $to }
plan-journal-missing = la entrada { $number } falta o está dañada
plan-journal-unfitting = la entrada { $number } no corresponde al plan: { $fault }
plan-journal-no-step = la entrada { $number } deshace o repite un paso que no existe
plan-journal-lost-steps = { $count ->
    [one] el plan está completo; { $count } paso anterior ya no se puede deshacer ni repetir
   *[other] el plan está completo; { $count } pasos anteriores ya no se pueden deshacer ni repetir
}
# reason is plan-journal-missing, -unfitting or -no-step.
plan-journal-lost-after = { $count ->
    [one] el plan está como estaba en la entrada { $after } de su diario; lo posterior se perdió ({ $reason }; no se pudo usar { $count } entrada posterior)
   *[other] el plan está como estaba en la entrada { $after } de su diario; lo posterior se perdió ({ $reason }; no se pudieron usar { $count } entradas posteriores)
}
plan-journal-lost-all = { $count ->
    [one] el plan está como estaba al comenzar su diario; lo posterior se perdió ({ $reason }; no se pudo usar { $count } entrada posterior)
   *[other] el plan está como estaba al comenzar su diario; lo posterior se perdió ({ $reason }; no se pudieron usar { $count } entradas posteriores)
}
plan-origin-unusable = el origen del plan en longitud { $longitude }, latitud { $latitude } no se puede usar: la longitud no debe pasar de 180 grados ni la latitud de 89

## What is wrong with a plan: the place, a colon and what is wrong there.

plan-place-document = plan
# Of the program of uses asked for.
plan-place-program-line = línea { $number } del programa
plan-place-section = sección de calle { $id }
plan-place-type = tipo de edificio { $id }
plan-place-setting = ajuste { $id }
plan-place-topography = topografía
plan-place-base-image = imagen de base
plan-place-alternative = alternativa { $id }
plan-place-site = límite del sitio
plan-place-site-at = límite del sitio, a { $east_m } m al este y { $north_m } m al norte
# A mark is anything drawn.
plan-place-mark = marca { $id } de la alternativa { $alternative }
plan-place-mark-at = marca { $id } de la alternativa { $alternative }, a { $east_m } m al este y { $north_m } m al norte

plan-fault-origin = el origen no debe pasar de 180 grados de longitud ni de 89 de latitud
plan-fault-no-alternative = no hay ninguna alternativa
plan-fault-mark-id-taken = su identificador también se usa en la alternativa { $alternative }
plan-fault-beyond-limit = está a más de 100 km del origen del plan
plan-fault-too-short = una línea necesita dos puntos separados entre sí
plan-fault-too-few-corners = un contorno necesita tres puntos separados entre sí
plan-fault-no-area = el contorno no encierra ninguna superficie
plan-fault-crosses-itself = el contorno se cruza o se toca a sí mismo
plan-fault-no-section = no hay sección de calle { $id }
plan-fault-no-type = no hay tipo de edificio { $id }
plan-fault-no-phase = no hay etapa { $id }
plan-fault-tied-to-nothing = unida a la calle { $street }, que no existe
plan-fault-tied-beyond = unida más allá del extremo de la calle { $street }
plan-fault-tied-in-circle = unida en círculo a través de la calle { $street }
plan-fault-off-its-tie = no está donde se une a la calle { $street }
# A side of a painted block.
plan-fault-side-of-no-street = un lado da a la calle { $street }, que no existe
# Shares are parts of 100 %.
plan-fault-over-whole = { $measure ->
    [program-shares] las proporciones del programa no deben sumar más que el total
    [intensity] la intensidad no debe superar el total
    [lot-shares] las proporciones cubierta, pavimentada y plantada del lote no deben sumar más que el total
    [outside-trips] las proporciones de viajes externos no deben sumar más que el total
   *[opacity] la opacidad no debe superar el total
}
plan-fault-zero = { $measure ->
    [lot-width] el ancho del lote debe ser mayor que 0
    [lot-depth] el fondo del lote debe ser mayor que 0
    [strip-width] el ancho de una franja debe ser mayor que 0
    [people-per-home] las personas por vivienda deben ser más de 0
    [stories] los pisos de un lado deben ser más de 0
    [spacing] la separación entre alturas debe ser mayor que 0
    [columns] el número de columnas debe ser mayor que 0
   *[walking-pace] debe ser mayor que 0
}
plan-fault-not-finite = debe ser un número finito
plan-fault-out-of-order = los valores bajo, típico y alto deben ir en orden ascendente
plan-fault-unlikely-pace = se camina a entre 0.3 y 3 metros por segundo
plan-fault-asked-twice = una línea anterior pide lo mismo
plan-fault-named-twice = se nombra dos veces
plan-fault-no-strips = no tiene franjas
plan-fault-no-travel-lane = es para vehículos de motor y no tiene carril de circulación
plan-fault-homes-without-floor = tiene viviendas y ninguna superficie construida para ellas
plan-fault-floor-without-homes = tiene superficie construida para viviendas y ninguna vivienda
plan-fault-floor-without-jobs = tiene superficie construida donde se trabaja y ningún empleo en ella, así que allí no se cuenta ninguno
plan-fault-ragged-rows = { $heights } alturas no llenan filas completas de { $columns }
plan-fault-not-an-image = no contiene ninguna imagen
plan-fault-more-votes = tiene más votos que personas presentes

# Por qué unos puntos no dicen dónde va la imagen bajo el dibujo.
plan-picture-together = estos puntos están uno sobre otro; elija puntos alejados entre sí
plan-picture-in-line = tres de estos puntos están en una línea; elija puntos repartidos por la imagen
plan-picture-torn = estos puntos desgarrarían la imagen; revise cuál va en cada lugar
