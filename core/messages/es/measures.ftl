# Measures: what figures counted on the drawing are called, and why they can not be worked out. Titles are in lower case:
# they stand in tables, and in formulas as "homes × people per home".
# Soft areas are drawn roughly: what is in them is an estimate. A front is the side of a lot toward a street, a side
# of a block along it. Nodes and links are those of the network of streets.

## Lots, densities and kinds of homes.

measures-group-with-homes = lotes con viviendas
measures-group-other-floor = lotes con trabajo, comercios, escuelas o salones
measures-group-built = lotes con edificios
measures-group-learning = lotes con escuelas
measures-group-without-homes = lotes con trabajo, comercios, escuelas o salones y sin viviendas
measures-band-lower = por debajo del centro del mercado
measures-band-middle = cerca del centro del mercado
measures-band-upper = por encima del centro del mercado
measures-lot-group = grupo de lotes
measures-price-band = banda de precio o de renta
measures-phase = etapa
measures-parking-per-lot = espacios de estacionamiento por lote
measures-parking-by-type = espacios de estacionamiento en lotes por tipo de edificio
measures-parking = espacios de estacionamiento en lotes
measures-lot-land = suelo de los lotes trazados
measures-land-left = suelo que los lotes dejan en las manzanas para edificar
measures-no-lot = suelo fuera de los lotes, en manzanas para edificar
measures-lot-typical = superficie de un lote típico
measures-lots-in-group = si los lotes de un tipo de edificio están en un grupo
measures-lot-land-type = suelo de los lotes por tipo de edificio
measures-lot-land-type-group = suelo de los lotes por tipo de edificio y grupo
measures-lot-land-group = suelo de los lotes por grupo
measures-land-with-homes = suelo de los lotes con viviendas
measures-land-other-floor = suelo de los lotes con trabajo, comercios, escuelas o salones
measures-land-built = suelo de los lotes con edificios
measures-land-school = suelo de lotes con escuelas
measures-density-site-land = suelo de la densidad de todo el sitio
measures-density-buildable-land = suelo de la densidad edificable
measures-density-site = viviendas por suelo de todo el sitio
measures-density-buildable = viviendas por suelo edificable
measures-density-lots = viviendas por suelo de los lotes con viviendas
measures-floor-no-parking = superficie construida sin estacionamiento
measures-floor-other = superficie construida de trabajo, comercios, escuelas y salones
measures-far-other = coeficiente de edificación de trabajo, comercios, escuelas y salones en sus lotes
measures-far-all = coeficiente de edificación de toda la superficie en lotes con edificios
measures-type-diversity = diversidad de viviendas entre tipos de edificio
measures-in-band = si un tipo de edificio está en una banda de precio
measures-homes-type-band = viviendas por tipo de edificio y banda de precio
measures-homes-band = viviendas por banda de precio o de renta
measures-lots-type-phase = lotes por tipo de edificio y etapa
measures-homes-phase = viviendas por etapa
measures-homes-type-phase = viviendas por tipo de edificio y etapa
measures-people-per-home-here = personas por vivienda, según los hogares locales
measures-people-type-band = personas por tipo de edificio y banda de precio
measures-people-band = personas por banda de precio o de renta
measures-people-type-phase = personas por tipo de edificio y etapa
measures-people-phase = personas por etapa
measures-jobs-type-band = empleos por tipo de edificio y banda de precio
measures-jobs-band = empleos por banda de precio o de renta de sus edificios
measures-jobs-type-phase = empleos por tipo de edificio y etapa
measures-jobs-phase = empleos por etapa
measures-floor-type-band = superficie construida por tipo de edificio y banda de precio
measures-floor-band = superficie construida por banda de precio o de renta
measures-floor-type-phase = superficie construida por tipo de edificio y etapa
measures-floor-phase = superficie construida por etapa
measures-jobs-type = empleos por tipo de edificio
measures-floor-lot = superficie construida en un lote
measures-jobs-lot-workplace = empleos en un lote por lugar de trabajo
measures-jobs-lot = empleos en un lote
measures-soft-lots-area-phase = lotes aproximados por área tentativa, tipo de edificio y etapa
measures-soft-lots-phase = lotes aproximados por tipo de edificio y etapa
measures-all-lots-phase = lotes y lotes aproximados por tipo de edificio y etapa
measures-diversity-name = diversidad de Simpson
measures-diversity-words = Uno menos la suma, entre los tipos de edificio, del cuadrado de la proporción de viviendas de cada tipo: la probabilidad de que dos viviendas elegidas al azar sean de tipos distintos. Los tipos son los de la paleta.
measures-diversity-one-list = la diversidad toma una lista y da un número
measures-homes-below-zero = un número de viviendas es menor que cero
measures-all-homes = todas las viviendas
measures-diversity = diversidad

## Why a figure can not be worked out.

measures-no-homes = no hay viviendas dibujadas
measures-no-floor = no hay superficie construida dibujada
measures-no-homes-where-walked = no hay viviendas dibujadas donde se camina
measures-no-center = no hay un centro de barrio dibujado
measures-share-of = proporción de { $what }

## Phases and places.

measures-whole-plan = todo el plan
# Followed by a place such as "12 m east, 8 m south". A face is the part of a block that one use is painted on.
measures-soft-at = área tentativa a
measures-block-at = manzana a

## Homes and people.

measures-building-type = tipo de edificio
measures-homes-per-lot = viviendas por lote
measures-people-per-home = personas por vivienda, por tipo de edificio
measures-household-scale = hogares locales frente a los de los tipos de edificio
measures-lots-type = lotes por tipo de edificio
measures-homes-type = viviendas por tipo de edificio
measures-homes = viviendas
measures-people-type = personas por tipo de edificio
measures-people = personas

## Floor area and jobs by use.

measures-use-homes = viviendas
measures-use-work = trabajo
measures-use-shops = comercios
measures-use-learning = enseñanza
measures-use-gathering = reunión
measures-use = uso
measures-workplace = lugar de trabajo
measures-floor-use-lot = superficie construida de cada uso en un lote
measures-floor-workplace-lot = superficie construida de cada lugar de trabajo en un lote
measures-jobs-per-floor = empleos por superficie construida, según los tipos de edificio
measures-floor-per-job-scale = superficie construida local por empleo frente a la de los tipos de edificio
measures-jobs-type-workplace = empleos por tipo de edificio y lugar de trabajo
measures-floor-type-use = superficie construida por tipo de edificio y uso
measures-floor-use = superficie construida por uso
measures-floor-type-workplace = superficie construida por tipo de edificio y lugar de trabajo
measures-floor-workplace = superficie construida por lugar de trabajo
measures-use-evenness = uniformidad de la superficie construida entre cinco usos
measures-jobs-workplace = empleos por lugar de trabajo
measures-jobs = empleos
measures-jobs-per-home = empleos por vivienda
measures-workers-per-home = residentes con empleo por vivienda
measures-workers = residentes con empleo
measures-jobs-per-worker = empleos por residente con empleo
measures-evenness-name = uniformidad sobre una lista fija
measures-evenness-words = La proporción de cada clase en el total por el logaritmo de esa proporción, sumada con el signo cambiado y dividida entre el logaritmo del número de clases de la lista. Una clase sin superficie construida cuenta en la lista y no suma nada.
measures-evenness-one-list = la uniformidad toma una lista y da un número
measures-amount-below-zero = una cantidad es menor que cero
measures-all-floor = toda la superficie construida
measures-evenness = uniformidad
# The name of a building type that one side of a street changes.
measures-built-stories = { $stories ->
    [one] { $name }, 1 piso
   *[other] { $name }, { $stories } pisos
}
measures-built-stories-shopfront = { $stories ->
    [one] { $name }, 1 piso, frente comercial
   *[other] { $name }, { $stories } pisos, frente comercial
}
measures-built-shopfront = { $name }, frente comercial

## The program: what is asked for, and what of it is drawn.

measures-not-asked-homes = el programa no pide viviendas
measures-not-asked-shop-floor = el programa no pide superficie comercial
measures-not-asked-work-floor = el programa no pide superficie de trabajo
measures-not-asked-school-seats = el programa no pide plazas escolares
measures-not-asked-park-land = el programa no pide suelo de parques
measures-not-asked-parking = el programa no pide espacios de estacionamiento
# What the program asks for; $what is homes, shop_floor, work_floor, school_seats, park_land or parking.
measures-program-typed = { $what ->
    [shop_floor] superficie comercial anotada en el programa
    [work_floor] superficie de trabajo anotada en el programa
    [school_seats] plazas escolares anotadas en el programa
    [park_land] suelo de parques anotado en el programa
    [parking] espacios de estacionamiento anotados en el programa
   *[homes] viviendas anotadas en el programa
}
measures-program-asked = { $what ->
    [shop_floor] superficie comercial pedida
    [work_floor] superficie de trabajo pedida
    [school_seats] plazas escolares pedidas
    [park_land] suelo de parques pedido
    [parking] espacios de estacionamiento pedidos
   *[homes] viviendas pedidas
}
measures-program-left = { $what ->
    [shop_floor] superficie comercial por dibujar
    [work_floor] superficie de trabajo por dibujar
    [school_seats] plazas escolares por dibujar
    [park_land] suelo de parques por dibujar
    [parking] espacios de estacionamiento por dibujar
   *[homes] viviendas por dibujar
}
measures-type-not-in-palette = un tipo de edificio que no está en la paleta
measures-drawn-shop-floor = superficie comercial dibujada
measures-drawn-work-floor = superficie de trabajo dibujada
measures-drawn-school-floor = superficie escolar dibujada
measures-floor-per-seat = superficie construida por plaza escolar
measures-drawn-homes = viviendas dibujadas
measures-drawn-seats = plazas escolares dibujadas
measures-drawn-parks = suelo de parques dibujado
measures-drawn-parking = espacios de estacionamiento dibujados
measures-homes-of-asked = viviendas dibujadas de las pedidas
measures-asked-type = tipo de edificio pedido
measures-homes-of-typed = viviendas de un tipo anotadas en el programa
measures-is-asked-type = si un tipo de edificio es el pedido
measures-homes-of-asked-type = viviendas pedidas por tipo
measures-homes-asked-built = viviendas por tipo pedido y tipo de edificio
measures-homes-of-drawn = viviendas dibujadas por tipo pedido
measures-homes-of-left = viviendas por dibujar por tipo

## Soft areas.

measures-soft-area = área tentativa
measures-soft-land = suelo de cada área tentativa
measures-soft-share = proporción de un área tentativa dada a un tipo de edificio
measures-lot-yield = proporción de suelo que se convierte en lotes
measures-lots-per-land = lotes que rinde el suelo
measures-soft-lot-land = suelo que se convierte en lotes en áreas tentativas, por área tentativa y tipo de edificio
measures-soft-lots-area-type = lotes aproximados por área tentativa y tipo de edificio
measures-soft-lots-type = lotes aproximados en áreas tentativas por tipo de edificio
measures-soft-homes-type = viviendas aproximadas en áreas tentativas por tipo de edificio
measures-soft-homes = viviendas aproximadas en áreas tentativas
measures-soft-homes-area-type = viviendas aproximadas por área tentativa y tipo de edificio
measures-soft-homes-area = viviendas aproximadas por área tentativa
measures-soft-in-phase = si un área tentativa se construye en una etapa
measures-soft-people-type = personas en viviendas aproximadas por tipo de edificio
measures-soft-people = personas en viviendas aproximadas de áreas tentativas
measures-soft-floor-type-use = superficie construida aproximada por tipo de edificio y uso
measures-soft-floor-use = superficie construida aproximada en áreas tentativas por uso
measures-soft-floor-type-workplace = superficie construida aproximada por tipo de edificio y lugar de trabajo
measures-soft-floor-workplace = superficie construida aproximada por lugar de trabajo
measures-soft-jobs-type-workplace = empleos aproximados por tipo de edificio y lugar de trabajo
measures-soft-jobs-workplace = empleos aproximados por lugar de trabajo
measures-soft-jobs = empleos aproximados en áreas tentativas
measures-is-park = si el suelo de un tipo de edificio es suelo de parques
measures-soft-parks-area-type = suelo de parques aproximado por área tentativa y tipo de edificio
measures-soft-parks = suelo de parques aproximado en áreas tentativas

## Where people walk to.

measures-to-center = un centro
measures-to-homes = otras viviendas
measures-to-work = trabajo
measures-to-shops = comercios
measures-to-learning = enseñanza
measures-to-gathering = reunión
measures-to-all-five = las cinco necesidades diarias
measures-to-all-five-sure = las cinco, sin lo que solo se espera
measures-to-park = un parque o plaza
measures-to-school = una escuela
measures-to-transit-stop = una parada de transporte

## Homes within a walk.

measures-destination = destino
measures-walking-time = tiempo a pie
measures-within-5 = en 5 minutos o menos
measures-within-10 = en 10 minutos o menos
measures-homes-within = viviendas en un tiempo a pie
measures-base-speed = velocidad a pie de base
measures-walking-speed = velocidad a pie
measures-slower-speed = velocidad de los peatones más lentos
# $pace is slower or planning.
measures-walk-base-time = { $pace ->
    [slower] tiempo a la velocidad de base de un recorrido a pie de { $minutes } minutos para peatones más lentos
   *[planning] tiempo a la velocidad de base de un recorrido a pie de { $minutes } minutos
}
measures-walk-homes = { $pace ->
    [slower] viviendas a { $minutes } minutos o menos para peatones más lentos, por destino
   *[planning] viviendas a { $minutes } minutos o menos, por destino
}
measures-walk-homes-share = { $pace ->
    [slower] proporción de viviendas a { $minutes } minutos o menos para peatones más lentos, por destino
   *[planning] proporción de viviendas a { $minutes } minutos o menos, por destino
}
measures-center-5 = viviendas a 5 minutos o menos de un centro
measures-center-5-share = proporción de viviendas a 5 minutos o menos de un centro
measures-center-5-slower = proporción de viviendas a 5 minutos o menos de un centro para peatones más lentos
measures-five-10 = proporción de viviendas con las cinco necesidades diarias a 10 minutos o menos
measures-five-sure-10 = proporción de viviendas con las cinco a 10 minutos o menos, sin lo que solo se espera
measures-five-10-slower = proporción de viviendas con las cinco necesidades diarias a 10 minutos o menos para peatones más lentos
measures-park-5 = proporción de viviendas a 5 minutos o menos de un parque o plaza

## The settings of walking, and where what counts by default comes from.

measures-set-homes = mínimo de viviendas juntas que cuentan como vecinos
measures-set-work = mínimo de empleos juntos que cuentan como trabajo
measures-set-shops = mínimo de superficie comercial junta que cuenta como comercios
measures-set-learning = mínimo de superficie de enseñanza junta que cuenta
measures-set-gathering = mínimo de superficie de reunión junta que cuenta
measures-set-school = mínimo de superficie de enseñanza junta que cuenta como escuela
measures-set-park = mínimo de suelo abierto en una parte de manzana que cuenta como parque o plaza
measures-set-wait-wide = espera media para cruzar una calle ancha o rápida
measures-set-wait-middle = espera media para cruzar una calle de tres carriles o de 35 millas por hora
measures-set-shared-speed = velocidad objetivo máxima de una calle sin acera por la que se camina
measures-set-shed-buffer = ancho de la franja de un área a pie a cada lado de las calles alcanzadas
measures-source-common = práctica común, sin fuente
measures-source-shops = la tienda de esquina más pequeña, 1,500 pies cuadrados (R. Gibbs, A primer on retail types and urban centers, Congress for the New Urbanism)
measures-source-learning = una guardería o una biblioteca de barrio: práctica común, sin fuente
measures-source-gathering = un salón pequeño: práctica común, sin fuente
measures-source-park = un sexto de acre (LEED 2009 for Neighborhood Development, crédito NPDc9, acceso al espacio cívico y público)
measures-source-wait-wide = un semáforo con un ciclo de 90 s y 11 s para empezar a cruzar: la mitad de (90 − 11)² ÷ 90 (Highway Capacity Manual, 2000, ecuación 18-5; el ciclo es práctica común, sin fuente)
measures-source-wait-middle = tres carriles de 11 pies con 300 vehículos por hora que no ceden el paso: (e^(v t) − v t − 1) ÷ v, t = longitud ÷ 3.5 pies por segundo + 3 s (Highway Capacity Manual, 2010, de memoria; el tránsito es práctica común, sin fuente)
measures-source-shared-speed = 20 millas por hora: práctica común, sin fuente

## Why nobody can walk to a destination.

measures-no-walkable-street = no hay dibujada ninguna calle por la que se pueda caminar
measures-no-work = no hay un lugar de trabajo dibujado
measures-no-shops = no hay comercios dibujados
measures-no-learning = no hay un lugar de enseñanza dibujado
measures-no-gathering = no hay un lugar de reunión dibujado
measures-no-all-five = no están dibujadas las cinco necesidades diarias
measures-no-park = no hay un parque ni una plaza dibujados
measures-no-school = no hay una escuela dibujada
measures-no-transit-stop = no hay una parada de transporte dibujada

## Parts of the land bar.

measures-part-homes = viviendas
measures-part-shops-work = comercios y trabajo
measures-part-civic = cívico
measures-part-green = verde
measures-part-water = agua
measures-part-streets = calles
measures-part-unused = aún sin uso

## What gives land its use.

measures-from-right-of-way = derechos de vía
measures-from-held-back = suelo restringido
measures-from-blocks = manzanas con un uso
measures-from-places = lugares dibujados sobre manzanas sin uso
measures-from-soft-areas = áreas tentativas
measures-from-nothing = nada todavía

## What holds land back.

measures-held-water = agua abierta
measures-held-wetland = humedal
measures-held-floodplain = zona inundable
measures-held-steep = terreno empinado
measures-held-conservation = conservación
measures-held-contaminated = suelo contaminado
measures-held-easement = servidumbres
measures-held-keep = se conserva como está
measures-held-owner = propietarios excluidos

## What is counted of land under constraints.

measures-count-covered = cubierto
measures-count-not-buildable = no se puede edificar
measures-count-not-in-site = no cuenta en todo el sitio
measures-count-not-in-buildable = no cuenta como edificable
measures-count-not-walkable = no se puede cruzar a pie

## Kinds of open space.

measures-open-parks = parques
measures-open-squares = plazas
measures-open-natural = suelo natural
measures-open-held-back = suelo verde restringido
measures-open-in-lots = plantado en lotes
measures-open-soft = parques en áreas tentativas, aproximadamente
measures-is-soft-park = si un tipo de espacio abierto son los parques en áreas tentativas

## Land of the site.

measures-land-part = uso del suelo
measures-land-source = qué da su uso al suelo
measures-constraint-kind = qué restringe el suelo
measures-constraint-count = qué se cuenta
measures-open-space-kind = tipo de espacio abierto
measures-land-counted = suelo contado en el dibujo
measures-land-bar = suelo por uso
measures-site-area = superficie del sitio
measures-land-bar-share = proporción del sitio por uso
measures-land-by-source = suelo según lo que le da su uso
measures-land-right-of-way = suelo en derechos de vía
measures-land-with-use = suelo edificable de manzanas con un uso
measures-land-of-places = suelo edificable de lugares
measures-land-of-soft = suelo edificable de áreas tentativas
measures-land-without-use = suelo edificable sin uso
measures-land-buildable = suelo edificable
measures-right-of-way-share = proporción del sitio en derechos de vía
measures-land-constraints = suelo con restricciones
measures-land-constraints-kind = suelo con restricciones por tipo
measures-held-back-kind = suelo restringido por tipo
measures-not-in-site-kind = suelo que no cuenta en todo el sitio por tipo
measures-not-in-buildable-kind = suelo que no cuenta como edificable por tipo
measures-not-walkable-kind = suelo que no se puede cruzar a pie por tipo
measures-not-in-site = suelo que no cuenta en todo el sitio
measures-not-in-buildable = suelo que no cuenta como edificable
measures-open-drawn = espacio abierto dibujado
measures-planted-share = proporción de un lote que está plantada
measures-planted-type = suelo plantado en lotes por tipo de edificio
measures-planted = suelo plantado en lotes
measures-is-planted = si un tipo de espacio abierto es suelo plantado en lotes
measures-open-space = espacio abierto por tipo
measures-parks = suelo en parques
measures-squares = suelo en plazas
measures-park-land = suelo de parques
measures-counted-site = suelo del sitio
measures-counted-no-boundary = suelo entre calles, pues no hay un límite del sitio dibujado
# A stretch of boundary from one way in to the next; $place is a way in.
measures-gap-from = desde { $place }

## Streets and blocks.

measures-way-streets = calles
measures-way-alleys = callejones
measures-way-paths = senderos
measures-legs-two = dos, en la esquina de dos calles o en una curva cerrada
measures-legs-three = tres
measures-legs-four = cuatro o más
measures-front-cut-off = en calles a las que no llega ninguna entrada
measures-front-on-paths = en un sendero, donde los vehículos pueden llegar por un callejón trasero
measures-front-none = en ninguna calle
measures-way-kind = tipo de vía
measures-street-section = sección de calle
measures-length-drawn = longitud dibujada dentro del sitio
measures-length-section = longitud por sección de calle
measures-length-way = largo de calles, callejones y senderos
measures-length-streets = largo de calles
measures-length-per-home = largo de calle por vivienda
measures-counting-rule = regla de conteo
measures-legs = cuántos enlaces se juntan
measures-intersections-legs = intersecciones contadas, según cuántos enlaces se juntan
measures-heads = finales de calles sin salida contados
measures-links = enlaces contados
measures-density-land = suelo entre el que la regla divide sus intersecciones
measures-least-ratio = relación mínima de enlaces a nodos que pide la propia regla
measures-intersections = intersecciones, por regla de conteo
measures-intersection-density = densidad de intersecciones, por regla de conteo
measures-nodes = nodos contados: intersecciones y finales de calles sin salida, por regla de conteo
measures-link-node = relación de enlaces a nodos, por regla de conteo
measures-link-node-least = relación de enlaces a nodos entre el mínimo que pide su propia regla: 1 o más cumple
measures-connected-node = relación de nodos conectados: intersecciones entre nodos, por regla de conteo
measures-part = parte conexa
measures-part-nodes = nodos en cada parte conexa (regla: enlaces entre nodos)
measures-part-links = enlaces en cada parte conexa (regla: enlaces entre nodos)
measures-parts = partes conexas de la red de calles
measures-graph-nodes = nodos (regla: enlaces entre nodos)
measures-graph-links = enlaces (regla: enlaces entre nodos)
measures-cycles = ciclos independientes
measures-beta = índice beta (regla: enlaces entre nodos)
measures-alpha-index = índice alfa, plano (regla: enlaces entre nodos)
measures-gamma-index = índice gamma, plano (regla: enlaces entre nodos)
measures-dead-end-axis = calle sin salida
measures-dead-end-lengths = longitud de cada calle sin salida
measures-dead-ends = calles sin salida
measures-dead-ends-length = longitud de todas las calles sin salida
measures-dead-end-longest = calle sin salida más larga
measures-way-in-axis = entrada
measures-single-place = calle o cruce único
measures-front-not-reached = por qué los vehículos no llegan al frente
measures-leading-in = calles y callejones que entran por cada entrada
measures-streets-leading-in = calles que entran por cada entrada, sin los callejones
measures-homes-behind = viviendas a las que los vehículos llegan solo por una calle o un cruce: las entradas, luego aquellos de los que dependen más viviendas
measures-fronts-not-reached = viviendas a cuyo frente no llegan vehículos de fuera, según por qué
measures-ways-in-out = entradas y salidas
measures-ways-over-streets = entradas y salidas por calles, sin los callejones
measures-gap-axis = tramo de límite entre entradas
measures-gaps = límite desde cada entrada hasta la siguiente
measures-gap-longest = tramo de límite más largo sin una entrada
measures-gap-total = límite entre entradas, en conjunto
measures-gap-mean = límite entre entradas, media
measures-gap-count = tramos de límite entre entradas
measures-most-behind = el mayor número de viviendas tras una sola calle o cruce
measures-most-behind-share = proporción de viviendas tras una sola calle o cruce, como máximo
measures-homes-not-reached = viviendas a cuyo frente no llegan vehículos de fuera
measures-fronting = qué da a la calle
measures-frontage = frente de calle según lo que da a ella
measures-frontage-total = frente de calle, ambos lados de las calles
measures-frontage-share = proporción del frente de calle según lo que da a ella
measures-block = manzana
measures-perimeters = perímetro de cada manzana rodeada de calles, a lo largo del derecho de vía
measures-longest-sides = lado más largo de cada manzana rodeada de calles, a lo largo del derecho de vía
measures-blocks = manzanas rodeadas de calles
measures-perimeter-median = perímetro de manzana, mediana
measures-perimeter-longest = perímetro de manzana, el mayor
measures-perimeter-total = perímetros de manzana en conjunto
measures-perimeter-mean = perímetro de manzana, media
measures-block-length-median = largo de manzana, mediana
measures-block-length-longest = largo de manzana, el mayor
measures-sun-streets = largo de calles a menos de 20° de este-oeste
measures-sun-blocks = manzanas con un eje a menos de 15° de este-oeste, al menos tan largas en ese sentido como a través
measures-sun-lots = lotes con viviendas
measures-sun-lots-solar = lotes con viviendas de al menos 75 ft de fondo con su línea de frente a menos de 30° de este-oeste
measures-sun-streets-share = proporción del largo de calle que va de este a oeste
measures-sun-blocks-share = proporción de manzanas que van de este a oeste
measures-sun-lots-share = proporción de lotes con viviendas que tienen el sol

## Why nothing is counted of streets.

measures-no-way-in = ninguna calle dentro del sitio se une a una calle de fuera, cruza el borde del sitio ni termina en un acceso al sitio
measures-no-heads = la regla solo cuenta intersecciones
measures-no-least = la regla no pide una relación mínima
measures-none-way-in = sin entrada

## What may front on a street.

measures-fronts-homes = viviendas
measures-fronts-shops-work = comercios y trabajo
measures-fronts-civic = edificios cívicos
measures-fronts-green = verde
measures-fronts-nothing = nada

## How a number is worked out from a list.

measures-count-name = cuántos hay en la lista
measures-count-words = Cada línea de la lista cuenta uno.
measures-count-some-name = cuántos de la lista no son cero
measures-count-some-words = Cada línea de la lista que no es cero cuenta uno.
measures-longest-name = el más largo de la lista
measures-largest-words = El número más grande de la lista, el primero si hay iguales.
measures-most-name = el mayor de la lista
measures-median-name = mediana de la lista
measures-median-words = El número que queda en medio cuando la lista se pone en orden; si son pares, la mitad de la suma de los 2 de en medio.
measures-alpha-name = índice alfa, plano
measures-alpha-words = Ciclos independientes entre los más que puede haber con tantos nodos si los enlaces solo se juntan en nodos: 2 × nodos − 5. Desde tres nodos. 0 es un árbol, 1 una red a la que no se puede añadir ningún enlace.
measures-gamma-name = índice gamma, plano
measures-gamma-words = Enlaces entre los más que puede haber con tantos nodos si los enlaces solo se juntan en nodos: 3 × (nodos − 2). Desde tres nodos.
measures-nothing-listed = no hay ninguno
measures-one-list = una lista da un número
measures-two-numbers = dos números dan uno
measures-few-nodes = hay menos de tres nodos
measures-list-lines = líneas de la lista
measures-list-lines-some = líneas de la lista que no son cero
measures-middle-one = en medio: { $label }
measures-middle-two = en medio: { $low } y { $high }
measures-most-cycles = los más ciclos
measures-alpha = alfa
measures-most-links = los más enlaces
measures-gamma = gamma

## What is missing on the drawing.

measures-no-boundary = no hay un límite del sitio dibujado
# Between a street's name, or one of the words below, and where it is: "Mill Street at 12 m east, 8 m south". A list
# names hundreds of places with it.
measures-joint-at = {", a "}

## What a place on the streets is called where its street has no name.

measures-place-dead-end = calle sin salida
measures-place-streets = calles
measures-place-street = calle
measures-place-crossing = cruce
measures-place-way-in = entrada
measures-place-front = frente
measures-place-segment = tramo

## Walking and mix in detail. A walk-shed is what is reached from a center within a time; directness is the length of
## a walk by the straight distance.

measures-best-center = mejor punto para un centro
measures-indirect-front = frente con los recorridos menos directos a un centro
measures-busiest-segment = tramo más transitado
measures-shed-areas = superficie del área a pie del centro
measures-shed-circles = círculos alrededor de un centro
measures-drawn-center = viviendas a 5 minutos o menos del centro dibujado, al paso del plan
measures-best-center-homes = viviendas a 5 minutos o menos del mejor punto
measures-directness-homes = viviendas con un recorrido a pie
measures-directness-sums = índice de rodeo de las viviendas, sumado
measures-directness-most = índice de rodeo que nueve décimas partes de las viviendas no superan
measures-indirect-fronts = índice de rodeo medio de un frente
measures-indirect-front-homes = viviendas de un frente
measures-segment-walks = recorridos a pie por un tramo
measures-walked-length = longitud de los tramos por los recorridos que pasan por ellos
measures-walked-busiest = longitud por los recorridos que pasan por ella, en la décima parte más transitada
measures-reached-homes = viviendas con superficie construida al alcance
measures-reached-evenness = uniformidad de la superficie construida que alcanzan las viviendas, sumada
measures-needs-sums = viviendas por necesidades diarias al alcance, sumadas
measures-developed-cells = celdas de una hectárea con superficie construida
measures-unlike-neighbors = proporciones de vecinos distintos, sumadas
measures-shed-method = cómo se toma la superficie
measures-walk = recorrido a pie
measures-shed-time = tiempo del recorrido a pie
measures-shed-area = superficie del área a pie del centro, por método
measures-shed-circle = círculo de la misma distancia a pie
measures-shed-ratio = área a pie entre su círculo, por método
measures-directness-mean = longitud del recorrido a pie entre la distancia recta, media de las viviendas
measures-directness-90 = longitud del recorrido a pie entre la distancia recta que nueve décimas partes de las viviendas no superan
measures-worst-directness = recorridos menos directos a un centro, por frente
measures-worst-directness-homes = viviendas con los recorridos menos directos a un centro
measures-best-5 = viviendas a 5 minutos o menos del mejor punto para un centro
measures-best-5-share = proporción de viviendas a 5 minutos o menos del mejor punto para un centro
measures-best-5-more = viviendas que el mejor punto tiene de más que el centro dibujado
measures-busiest-walks = recorridos a pie por el tramo más transitado, uno por cada vivienda y necesidad diaria
measures-busiest-tenth = proporción de los recorridos a pie por el décimo más transitado del largo de calle
measures-evenness-mean = uniformidad de la superficie construida que alcanza una vivienda, media de las viviendas
measures-needs-mean = cuántas de las cinco necesidades diarias alcanza una vivienda, media de las viviendas
measures-daily-need = necesidad diaria
measures-sure-need-homes = viviendas a un recorrido a pie de cada necesidad diaria, sin lo que solo se espera
measures-sure-need-share = proporción de viviendas a un recorrido a pie de cada necesidad diaria, sin lo que solo se espera
measures-dissimilarity = proporción de hectáreas vecinas de otro uso, media de las hectáreas
measures-none-point = ningún punto
measures-none-segment = ningún tramo
measures-none-front = ningún frente
measures-nobody-walks = nadie camina a una necesidad diaria

## Walk-sheds, and why details can not be worked out.

measures-waiting = se calcula cuando el dibujo queda en reposo
measures-method-frontages = suelo de los lotes cuyo frente se alcanza
measures-method-hull = envolvente de las calles alcanzadas
measures-method-buffer = franja a lo largo de las calles alcanzadas
measures-lots-too-far = los lotes están a más de 20 km unos de otros
measures-no-walks = ninguna vivienda tiene un recorrido a pie de un metro o más hasta ahí
measures-band-width = el ancho de la franja no está entre 0 y 1 km
measures-several-centers = hay varios centros dibujados y esto se dice de uno solo

## Yardsticks: what as many people, or as much floor, have elsewhere.

measures-occupied-share = proporción de viviendas habitadas
measures-parks-land-person = suelo de parques por persona en todo el país
measures-people-park = personas por cada parque en todo el país
measures-shops-floor-person = superficie de comercios por persona en todo el país
measures-area-space = superficie por espacio de estacionamiento, con sus accesos
measures-households = hogares: viviendas habitadas
measures-in-households = personas en viviendas habitadas
measures-park-per-person = parques y plazas dibujados, por persona
measures-park-elsewhere = suelo de parques que tienen otras tantas personas en todo el país
measures-park-elsewhere-share = parques y plazas dibujados, del suelo que tienen otras tantas personas en todo el país
measures-parks-elsewhere = parques que tienen otras tantas personas en todo el país
measures-shop-elsewhere = superficie de comercios que tienen otras tantas personas en todo el país
measures-shop-elsewhere-share = comercios dibujados, de la superficie que tienen otras tantas personas en todo el país
measures-parking-land = suelo que ocupa el estacionamiento en lotes, sin apilarlo
measures-parking-land-share = proporción del suelo de lotes con edificios que ocupa su estacionamiento, sin apilarlo
measures-parking-type-group = espacios de estacionamiento en lotes por tipo de edificio y grupo de lotes
measures-parking-group = espacios de estacionamiento en lotes por grupo de lotes
measures-floor-type = superficie construida sin estacionamiento, por tipo de edificio
measures-floor-type-group = superficie construida sin estacionamiento, por tipo de edificio y grupo de lotes
measures-floor-group = superficie construida sin estacionamiento, por grupo de lotes
measures-floor-per-space = superficie construida por cada espacio de estacionamiento, por grupo de lotes
measures-school-site = terreno que una guía antigua pide a una escuela primaria con las plazas dibujadas
measures-school-site-share = suelo de lotes con escuelas, del terreno que pide una guía antigua
measures-school-site-first = terreno de una escuela primaria, antes de sus alumnos
measures-school-site-seat = terreno de una escuela, por cada alumno
measures-school-site-seats = terreno de una escuela, por las plazas dibujadas

## What a town's rule allows on land that is held back in part.

measures-allowance-shares = proporción del suelo con restricciones que descuenta la regla del municipio, por clase
measures-allowed-by-land = viviendas por suelo que permite la regla del municipio
measures-standing-right-of-way = suelo del derecho de vía de calles que existen hoy y se quedan
measures-allowance-taken-kind = suelo que la regla del municipio descuenta por restricciones, por clase
measures-allowance-constrained = suelo que la regla del municipio descuenta por restricciones
measures-allowance-taken = suelo que la regla del municipio descuenta por calles existentes y por restricciones
measures-adjusted-land = suelo del sitio sobre el que la regla del municipio cuenta viviendas
measures-allowed-homes = viviendas que permite la regla del municipio
measures-whole-homes-name = viviendas enteras en el suelo
measures-whole-homes-words = El suelo por las viviendas que le tocan, redondeado hacia abajo: una parte de vivienda no es ninguna.
measures-whole-homes = viviendas enteras
measures-no-allowed-homes = no se han fijado viviendas por suelo para la regla del municipio

## Homes by how far people walk.

measures-mean-walk = largo medio de un recorrido a pie
measures-walk-distance = largo del recorrido, al octavo de milla más cercano
measures-walks-as-long = proporción de todos los recorridos que son al menos así de largos
measures-homes-at-distance = viviendas por largo del recorrido a cada destino
measures-homes-likely-distance = viviendas, cada una por la proporción de recorridos al menos tan largos como el suyo, por largo del recorrido
measures-homes-likely = viviendas, cada una por la proporción de recorridos al menos tan largos como el suyo
measures-homes-likely-share = proporción de viviendas, cada una por la proporción de recorridos al menos tan largos como el suyo

## What streets are like to walk along and across.

measures-grade = pendiente del terreno
measures-grade-20 = hasta 1 en 20
measures-grade-12 = más de 1 en 20, hasta 1 en 12
measures-grade-steeper = más de 1 en 12
measures-graded = largo de calles, callejones y senderos por pendiente del terreno a lo largo
measures-length-grade = largo de calles, callejones y senderos por pendiente
measures-graded-total = largo de calles, callejones y senderos de pendiente conocida
measures-grade-share = proporción del largo de calles, callejones y senderos por pendiente
measures-enclosed = frente de calle a lo largo de edificios al menos dos tercios tan altos como su distancia al eje de la calle
measures-enclosed-share = proporción del frente de calle que los edificios encierran
measures-tree-lined = frente de calle con árboles entre la acera y el tráfico, a 50 pies como máximo
measures-tree-lined-share = proporción del frente de calle con árboles en hilera
measures-carriageway = cruce de calle más ancho, de bordillo a bordillo
measures-crossing-speed = velocidad a pie para tiempos de semáforo
measures-crossing-check-speed = velocidad a pie con la que se comprueba un cruce entero
measures-push-button = del botón peatonal al bordillo
measures-crossing-clearance = tiempo de despeje de un semáforo en el cruce más ancho
measures-crossing-length = cruce más ancho, del botón al otro lado
measures-crossing-whole = tiempo que toma el cruce más ancho desde el botón
measures-crossing-walk = tiempo de paso de un semáforo en el cruce más ancho
measures-no-street-inside = ninguna calle queda dentro del sitio
measures-no-ground = no se conoce la altura del terreno
