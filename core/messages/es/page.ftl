## Alternatives.

page-step-copy-alternative = copiar alternativa
page-step-move-alternative = mover alternativa
page-step-delete-alternative = eliminar alternativa
page-alternative-last = Un plan conserva al menos una alternativa.
page-alternative-alone = Por ahora el plan tiene una sola alternativa.
# In the name of a copy, after a parenthesis and before its number: Name (copy), Name (copy 2).
page-copy = copia
# Streets that so many of all alternatives share.
page-shared-in = en { $shared } de { $all }
page-shared-near = Las calles a menos de { $length } entre sí y en más o menos la misma dirección cuentan como una.

## Measures in US customary units, the number written before.

page-feet = { $number } ft
page-square-feet = { $number } ft²
page-acres = { $number } acres
page-feet-per-second = { $number } ft/s

## Where values come from, in the basis of a figure.

page-basis-counted = Contado en el dibujo.
page-basis-chosen = Elegido en el plan.
page-basis-factor = Tomado de las tablas de factores.

## Legends of maps of walking. A walk is one from a home to a daily need.

page-walks-none = sin recorridos
page-walks-up-to-one = hasta 1 recorrido
page-walks-busiest-tenth = recorridos en el décimo más transitado del largo de calle
page-walks-about = Un recorrido desde cada vivienda hasta lo más cercano de cada necesidad diaria; no cuántas personas caminarán.
page-indirect-about = Longitud del recorrido dividida por la distancia en línea recta, ambas hasta el centro más cercano.
page-best-drawn = centro dibujado
page-best-none = ningún punto único queda cerca de más viviendas
page-best-point = mejor punto único
# The numbers of walks are written before.
page-walks-up-to = hasta { $most } recorridos
page-walks-between = más de { $least } hasta { $most } recorridos
page-walks-over = más de { $least } recorridos
page-walks-busiest = el más transitado: { $street }
page-walks = { $walks } recorridos
page-indirect-row = { $times } veces la línea recta, { $homes }
# Homes is a number with its word, such as 120 homes.
page-best-reach = { $homes } a 5 minutos o menos
page-best-reach-drawn = { $homes } a 5 minutos o menos; centro dibujado: { $drawn }

## Said after a step or a command.

page-typed-not-understood = No se entendió. Una longitud es un número como 120; un rumbo, uno como 45, o +90 desde el tramo anterior.

## The samples.

page-sample-village = Pueblo compacto
page-sample-village-about = Unas 700 viviendas alrededor de un centro; lo demás sigue siendo campo y bosque.
page-sample-subdivision = Fraccionamiento convencional
page-sample-subdivision-about = El mismo programa sobre todo el suelo, con una sola entrada.
page-sample-strip = Corredor comercial desgastado, en reparación
page-sample-strip-about = Un corredor comercial y calles sin salida, con nuevas conexiones.
page-sample-site = Solo el sitio
page-sample-site-about = Límite y restricciones; todavía nada dibujado.

## Opening and saving files.

page-saved = Guardado como { $name }.
# First is a fault in a sentence of its own.
page-opened-partly = Se abrió { $name }, pero no todo está como debería. { $first }
page-opened-partly-more = { $count ->
    [one] Se abrió { $name }, pero no todo está como debería. { $first } (y { $count } más parecido)
   *[other] Se abrió { $name }, pero no todo está como debería. { $first } (y { $count } más parecidos)
}

## Whether a place exists.

page-certainty-existing = Existente
page-certainty-committed = Acordado
page-certainty-hoped = Esperado

## Status of a street.

page-status-existing = Existente
page-status-kept = Se conserva
page-status-removed = Por retirar
page-status-new = Nueva

## Owner of a street.

page-owner-state = Estado
page-owner-town = Municipio o condado
page-owner-private = Privado
page-inside = Dentro del sitio
page-outside = Fuera del sitio

## What can be typed or chosen about a thing of the plan.

page-field-name = Nombre
page-field-kind = Tipo
page-field-certainty = Certeza
page-field-phase = Etapa
page-field-minimum-size = Tamaño mínimo
page-field-has-land = Dibujar su terreno por vértices
page-field-outside-trips = Proporción de viajes externos
page-field-wait = Espera para cruzar
page-field-buildable = Se puede edificar
page-field-in-site = Cuenta como suelo del sitio
page-field-in-buildable = Cuenta como suelo edificable
page-field-walkable = Se puede cruzar a pie
page-field-owners = Propietarios
page-field-stories-beside = Máximo de pisos al lado
page-field-clear-beside = Edificios apartados
page-field-reach-beside = Lotes al lado, hasta
page-field-use = Tipo de edificio
page-field-intensity = Proporción de suelo construido
page-field-homes = Viviendas
page-field-jobs = Empleos
page-field-shop-floor = Superficie de comercios
page-field-text = Observación
page-field-author = Mesa
page-field-votes = Votos
page-field-present = Personas presentes
page-field-street-section = Sección de calle
page-field-status = Estado
page-field-street-owner = Propietario
page-field-outside = Se encuentra
page-field-plan-name = Nombre del plan
page-field-alternative-name = Su nombre
page-field-alternative-table = Dibujada por la mesa
page-field-about = Lo que muestra
page-field-latitude = Latitud, norte
page-field-longitude = Longitud, este
page-field-phase-name = Nombre de la etapa
page-field-asked = Programa
# Where things that are selected together hold unlike values.
page-different = Valores distintos
page-lots-beside = { $count ->
    [one] { $count } lote junto a ella
   *[other] { $count } lotes junto a ella
}
page-lots-without-room = { $count ->
    [one] No hay lugar para el edificio de { $count } lote; se cuenta igual
   *[other] No hay lugar para los edificios de { $count } lotes; se cuentan igual
}
page-unit-square-feet = ft²
page-unit-acres = acres

## What a thing is called, as a heading.

page-title-street = Calle
page-title-block = Manzana
page-title-soft-area = Área tentativa
page-title-site-access = Acceso al sitio
page-title-parcel = Parcela
page-title-barrier = Barrera o cerca
page-title-crossing = Cruce
page-title-outside = Entorno exterior
page-title-note = Nota
page-title-together = Todo lo seleccionado
page-field-parcel-label = Etiqueta, nunca el nombre de una persona

## Headings of the column of figures.

page-heading-land = Suelo
page-heading-homes = Viviendas y personas
page-heading-walking = Caminar
page-heading-mix = Mezcla
page-heading-streets = Calles
page-heading-blocks = Manzanas
page-heading-sun = Sol
page-heading-other = Otras

## Short titles of the first figures, where there is little room.

page-short-homes-of-asked = Dibujadas de las pedidas
page-short-density = Viviendas por suelo edificable
page-short-homes = Viviendas
page-short-length-per-home = Calle por vivienda
page-short-center = Viviendas a 5 min de un centro
page-short-park = Viviendas a 5 min de parque o plaza
page-short-all-five = Con las cinco necesidades a 10 min
page-short-all-five-sure = Lo mismo, sin lo que solo se espera
page-short-jobs = Empleos
page-short-jobs-per-home = Empleos por vivienda
page-short-ways = Entradas y salidas
page-short-behind-one = Viviendas tras una sola entrada
page-short-perimeter-median = Perímetro de manzana, mediana
page-short-perimeter-longest = Perímetro de manzana, el mayor

## How many rows of a table hold anything.

page-rows-none = ninguno
page-rows-one = 1 fila
page-rows-kinds = { $count ->
    [one] { $count } tipo
   *[other] { $count } tipos
}
page-rows = { $count ->
    [one] { $count } fila
   *[other] { $count } filas
}

## Forms.

page-site = Límite del sitio
page-site-none = Todavía no hay ninguno dibujado.
page-field-refused = Ese no es un número o nombre que se pueda aceptar; el plan queda como estaba.
page-phase-in-use = Hay algo dibujado en esta etapa; páselo antes a otra.
page-step-add-phase = agregar etapa
page-step-move-phase = mover etapa
page-step-delete-phase = eliminar etapa
page-phase-new = Etapa { $number }
# Field is the name of a field, such as "minimum size".
page-step-change = cambiar { $field }
page-given-up = Abandonado; el plan queda como antes.
page-tool = Herramienta { $tool }. { $awaits }

## Whether this browser keeps the plan.

page-kept = Guardado en este navegador
page-keeping = Guardando…
page-kept-lost = Este navegador no pudo guardar el último paso del plan que estaba abierto antes.
page-not-kept-full = Este navegador no puede guardar el plan (está lleno): guárdelo como archivo.
page-not-kept-other-window = Este navegador ya no guarda el plan (otra ventana lo tiene abierto y siguió): guárdelo como archivo o elija cómo seguir.
page-not-kept-forgotten = Este navegador ya no guarda el plan (otra ventana lo olvidó): guárdelo como archivo o siga con una copia.
page-not-kept-refused = Este navegador no puede guardar el plan (se niega): guárdelo como archivo.
page-kept-stroke-lost = el trazo sin terminar no encaja en el plan y se omite
page-ago-now = ahora mismo
page-kept-unusable = el plan no se puede volver a abrir: { $losses }
page-ago-minutes = { $count ->
    [one] hace { $count } minuto
   *[other] hace { $count } minutos
}
page-ago-hours = { $count ->
    [one] hace { $count } hora
   *[other] hace { $count } horas
}
page-ago-days = { $count ->
    [one] hace { $count } día
   *[other] hace { $count } días
}
page-kept-no-longer = este navegador ya no guarda el plan: otra ventana lo olvidó
page-kept-not-so-far = Los pasos anteriores a este no están guardados en este navegador.
page-kept-not-handed-out = este navegador no entrega lo que guarda
# Opened is a sentence that says which plan was opened.
page-kept-unfinished = { $opened } Incluye el trazo sin terminar; deshacer lo quita.
page-kept-partly = No todo lo guardado se pudo usar: { $losses }.
page-forgotten = { $plan } quedó olvidado.
page-forgotten-already = { $plan } ya estaba olvidado.
page-not-forgotten = { $plan } no se olvidó: otra ventana siguió con él.
page-does-not-forget = Este navegador no olvida { $plan }.
page-lasting = Este navegador guarda ahora sus planes hasta que usted los quite.
page-not-lasting = Este navegador no promete nada: guarde como archivos los planes que importan.

## Maps over the plan.

page-map-plain = Sin mapa, solo el plan
page-map-five = Las cinco necesidades diarias al alcance
page-map-routes = Recorridos a pie
page-map-indirect = Los recorridos menos directos al centro
page-map-shared = Calles que comparten las alternativas
page-needs-all = las cinco
page-needs-none = ninguna de las cinco
page-node-counted = contadas
page-node-heads = finales de calles sin salida contados
page-node-left-out = contadas solo por otras reglas
page-map-walk = A pie hasta: { $destination }
page-map-said = Mapa: { $map }.
page-share-of-homes = { $share } de las viviendas
page-minutes = { $count } min
# The pace of walking.
page-at-pace = A { $pace }.
page-best-point-not = { $note } Mejor punto único: { $why }.
page-needs = { $count } de las cinco
page-within-minutes = En { $count } minutos o menos a { $pace }.
page-no-figure = no existe la cifra { $figure }

## A plan that was not named yet.

page-untitled = Plan sin título

## Moments of the history.

page-moment-none = Ningún momento está marcado.
page-moment-here = El plan ya está ahí.
page-moment-earlier-step = un paso anterior
page-moment-step = paso { $number }
page-moment-marked = Marcado: { $name }. Los cambios se muestran respecto a él.
page-moment-after = Tras el paso { $number }
page-was = antes { $before }

## The program.

page-program-homes = Viviendas en total
page-program-shop-floor = Superficie de comercios
page-program-work-floor = Superficie de trabajo
page-program-school-seats = Cupos escolares
page-program-park-land = Suelo de parques
page-program-parking = Espacios de estacionamiento
# More is drawn than is asked.
page-program-beyond = { $number } de más

## What of the plan is measured.

page-part-all = Todo, según la propuesta
page-part-today = Como está hoy
page-part-up-to = Hasta { $phase }
page-part-alone = Solo { $phase }

## What a lot of a building type holds.

page-holds-open = suelo abierto
page-holds-floors = { $count ->
    [one] { $count } piso, lote de { $width }
   *[other] { $count } pisos, lote de { $width }
}
page-holds-homes = { $count ->
    [one] { $count } vivienda en un lote de { $width }
   *[other] { $count } viviendas en un lote de { $width }
}
# The drawing in words, for those who listen: the alternative and the walking are sentences of their own.
page-described = Dibujo de { $plan }. { $alternative } { $walk }

## Steps.

page-measured-all = Se mide: todo
page-step-units = cambiar unidades
page-units-metric = Las cifras están ahora en metros y hectáreas.
page-units-customary = Las cifras están ahora en pies y acres.
# What a listener is told while keys draw.
page-run-shown = { $length }, rumbo { $degrees }°
page-point-set = Punto { $number } puesto. { $awaits }
page-nothing-more = No hay nada más.
page-measured = Se mide: { $what }
page-undone = Deshecho: { $step }
page-done-again = Rehecho: { $step }
page-places-shown = { $count ->
    [one] { $count } lugar mostrado en el dibujo.
   *[other] { $count } lugares mostrados en el dibujo.
}

## What stands where, and streets without a name.

page-extent-point = un punto
page-extent-stretch = un tramo de calle
page-path = Sendero
page-alley = Callejón
page-lane = Callejuela
page-street = Calle
page-block-no-use = sin uso, salvo en sus lados

## Strips of a street section, in a list with their widths.

page-strip-walk = acera
page-strip-planting = franja plantada
page-strip-parking = estacionamiento
page-strip-bicycles = bicicletas
page-strip-travel = circulación
page-strip-median = mediana
page-strip-swale = cuneta vegetada

## What is selected, what was opened, and what steps changed.

page-selected-streets = { $count ->
    [one] { $count } calle seleccionada
   *[other] { $count } calles seleccionadas
}
page-selected-things = { $count ->
    [one] { $count } elemento seleccionado
   *[other] { $count } elementos seleccionados
}
page-selected-both = { $streets ->
    [one] { $streets } calle
   *[other] { $streets } calles
} y { $things ->
    [one] { $things } elemento más
   *[other] { $things } elementos más
} en la selección
page-selected-corner = { $street }: vértice { $number } de { $count }
page-selected-corner-held = { $street }: vértice { $number } de { $count }, sujeto a otra calle
page-selected-place = { $kind }, { $extent }
page-selected-place-named = { $kind } “{ $name }”, { $extent }
page-selected-street = { $street }, { $section }, derecho de vía de { $width }, { $length } de largo
page-selected-street-alone = { $street }, { $length } de largo
page-selected-block = Manzana: { $program }
page-selected-block-sides = { $count ->
    [one] Manzana: { $program }; { $count } lado propio
   *[other] Manzana: { $program }; { $count } lados propios
}
page-strips-mph = { $strips }; { $speed } mph
page-opened = Se abrió { $plan }. { $alternative }
page-alternative-unnamed = Alternativa
page-alternative = { $name }: { $streets ->
    [one] { $streets } calle dibujada
   *[other] { $streets } calles dibujadas
} y { $blocks ->
    [one] { $blocks } manzana pintada
   *[other] { $blocks } manzanas pintadas
}.
page-walk-reached = { $length } de calle quedan a 5 minutos o menos de un centro.
page-figure-moved = { $figure }: { $value }, antes { $before }
page-step-moved = { $step }. { $figures }.
page-step-moved-more = { $step }. { $figures }; y { $count } más.
page-step-moved-nothing = { $step }. Ninguna cifra cambió.

## Faults of the browser.

page-no-page-to-save = no hay página desde la cual guardar
page-file-refused = el navegador no aceptó el archivo { $file }
page-file-not-fetched = no se pudo obtener { $file }: { $fault }
page-file-not-read = no se pudo leer el archivo { $file }
page-no-page-to-draw = no hay página en la cual dibujar
page-no-drawing = el navegador no puede dibujar en un lienzo
page-no-canvas = no existe el lienzo { $canvas }

## The page's outermost parts.

page-skip = Ir al dibujo
page-drawing-tools = Herramientas de dibujo
page-dismiss = Descartar

## Editors: words of several of them.

page-name = Nombre
page-name-empty = un nombre no puede quedar vacío
page-building-type = Tipo de edificio

## The editor of a building type.

page-type-tint = El suelo se colorea como
page-type-envelope = Envolvente
page-type-price = Precio o renta
page-type-stories = Edificio, de la planta baja hacia arriba
page-type-add-story = Agregar un piso
page-type-envelope-and-price = Envolvente y precio
page-type-lot = Lote
page-type-width = Ancho a lo largo de la calle
page-type-depth = Fondo
page-type-homes-and-people = Viviendas y personas
page-type-homes = Viviendas en un lote
page-type-people = Personas por vivienda
page-type-parking = Estacionamiento
page-type-parking-on-lot = Estacionamiento en un lote
page-type-cover = Cobertura del suelo de un lote
page-type-under-buildings = Bajo edificios
page-type-paved = Pavimentado
page-type-planted = Plantado
page-type-floor-area = Superficie construida en un lote
page-type-height = Altura, de piso a piso
page-type-jobs = Empleos en el piso

## Uses of a story.

page-floor-homes = Viviendas
page-floor-work = Trabajo
page-floor-shops = Comercios
page-floor-learning = Enseñanza
page-floor-gathering = Reunión
page-floor-parking = Estacionamiento

## How well a building keeps heat.

page-envelope-older = Como en edificios antiguos
page-envelope-code = Como pide el código
page-envelope-better = Mejor que el código

## Price bands.

page-price-lower = Por debajo del nivel medio
page-price-middle = Alrededor del nivel medio
page-price-upper = Por encima del nivel medio

## Stories of a building type, by number.

page-story = Piso { $number }
page-story-use = Uso del piso { $number }
page-story-remove = Quitar el piso { $number }

## The cut through a street.

page-cut-close = Cerrar el corte
page-cut-where = Por dónde pasa
page-cut-left = Izquierda
page-cut-right = Derecha
page-cut-open = ningún edificio en el corte a menos de 130 ft (40 m)
page-cut-ratio = Altura : ancho
page-cut-ratio-about = Altura: media de ambos lados, con las alturas de piso de los tipos de edificio, sin techos. Ancho: entre los frentes. LEED 2009 for Neighborhood Development, prerrequisito NPDp1, pide 1 : 3 o más cerrado a lo largo del 15% de los frentes.
page-cut-no-ratio = ninguna: un lado está abierto

## Uses of floors, painted on the building in the cut.

page-cut-homes = viviendas
page-cut-work = trabajo
page-cut-shops = comercios
page-cut-learning = enseñanza
page-cut-gathering = reunión
page-cut-parking = estacionamiento

## The cut through a street, in sentences.

page-cut = Corte de { $street }
# How far along a street the cut is, and how long the street is.
page-cut-at = { $along } de { $length }
page-cut-side = { $name }, { $stories ->
    [one] { $stories } piso
   *[other] { $stories } pisos
}, { $height } de alto, a { $setback } del derecho de vía
page-cut-right-of-way = derecho de vía { $width }

## Buttons, steps and refusals of the editors.

page-editor-done = Listo
page-editor-duplicate = Duplicar
page-editor-delete = Eliminar
page-editor-gone = lo que se editaba ya no está
page-editor-last = el último no se puede eliminar
page-step-section = cambiar sección de calle
page-step-building-type = cambiar tipo de edificio
page-step-use = cambiar uso
page-step-walking = cambiar un ajuste
page-step-duplicate = duplicar
page-step-delete-entry = eliminar de la paleta

## Copies and users of what is edited.

# The name of a duplicate.
page-editor-variant = { $name }, variante
page-editor-used = se puede eliminar donde nada lo usa; aquí lo usa: { $users }
page-and = { $first } y { $second }
page-count-blocks = { $count ->
    [one] { $count } manzana
   *[other] { $count } manzanas
}
page-count-soft-areas = { $count ->
    [one] { $count } área tentativa
   *[other] { $count } áreas tentativas
}
page-count-program-lines = { $count ->
    [one] { $count } línea del programa
   *[other] { $count } líneas del programa
}

## The editor of the use of land.

page-land-share = Proporción
page-land-most-stories = Pisos como máximo
page-land-setback = Retiro
page-land = Uso de este suelo
page-land-yields = Lo que rinde ahora
page-land-sides = Sus lados
page-land-add-type = Agregar un tipo de edificio
page-land-fill-up = Completar hasta 100%
page-land-together = En conjunto
page-front-street = Como lo permita la calle
page-front-front = Los lotes dan el frente a ella
page-front-side = Los lotes le dan un lado
page-front-rear = Los lotes le dan el fondo
page-front-none = Nada da a ella
page-land-lots-stand = Cómo se sitúan los lotes
page-land-as-the-land = Como el suelo
page-land-shopfront = La planta baja abre como comercio
page-land-unsaid-stories = Vacío: los que tiene el tipo de edificio.
page-land-unsaid-setback = Vacío: lo usual para el tipo de edificio.
page-land-asleep = Este suelo ya no está encerrado: su uso duerme hasta que las calles lo vuelvan a encerrar.
page-land-all-types = todos los tipos de edificio están ya en el programa
page-yield-lots = Lotes
page-yield-homes = Viviendas
page-yield-jobs = Empleos
page-yield-floor = Superficie construida
page-yield-stories = Pisos
page-yield-parking = Estacionamiento en los lotes

## Where a side of land lies.

page-side = Lado
page-side-north = Lado norte
page-side-south = Lado sur
page-side-east = Lado este
page-side-west = Lado oeste
page-side-northeast = Lado noreste
page-side-northwest = Lado noroeste
page-side-southeast = Lado sureste
page-side-southwest = Lado suroeste
page-said-shopfront = frente comercial

## The use of land, in sentences.

page-land-share-of = Proporción de { $name }
page-land-remove = Quitar { $name }
page-land-type = Tipo de edificio { $number }
page-land-without-use = { $total }, { $rest } sin uso
page-to = { $least } a { $most }
page-side-on-left = { $street }, a la izquierda
page-side-on-right = { $street }, a la derecha
page-said-stories = { $count ->
    [one] máximo { $count } piso
   *[other] máximo { $count } pisos
}
page-said-clear = edificios a { $distance }
page-said-lots = { $count ->
    [one] { $count } lote
   *[other] { $count } lotes
}
page-said-setback = retiro { $setback }

## What can be done with a selected street.

page-street-cut = Mostrar el corte
page-street-section = Editar su sección de calle

## Units behind numbers that are typed, and why a typed number is refused.

page-not-a-number = escriba un número como 9.5
page-unit-feet = ft
page-unit-mph = mph
page-unit-feet-per-second = ft/s
page-unit-people = personas
page-unit-spaces = espacios
page-unit-homes-per-hectare = viviendas por ha
page-unit-homes-per-acre = viviendas por acre
page-unit-per-hectare = por ha
page-unit-per-1000-square-feet = por 1,000 ft²

## Bounds of a number.

page-from-to = de { $least } a { $most }

## The editor of a street section.

page-kind-walk = Acera
page-kind-planting = Franja plantada
page-kind-parking = Estacionamiento
page-kind-bicycle = Bicicletas
page-kind-travel = Circulación
page-kind-median = Mediana
page-kind-swale = Cuneta vegetada
page-strip-width = Ancho de una franja
page-target-speed = Velocidad deseada
page-may-walk = Se puede caminar por ella
page-may-cycle = Pueden usarla bicicletas
page-may-drive = Pueden usarla vehículos de motor
page-fronts-left = Los lotes pueden dar el frente a su izquierda
page-fronts-right = Los lotes pueden dar el frente a su derecha
page-section = Sección de calle
page-right-of-way = Derecho de vía
page-strips = Franjas, de izquierda a derecha
page-strip-add = Agregar una franja
page-speed-and-use = Velocidad y uso
page-section-caution = El acceso de bomberos y el ancho de los carriles corresponden a los códigos locales y a profesionales con licencia.
page-strip-no-place = no hay ninguna franja de ese lado
page-strip-last = una sección de calle necesita una franja

## Sources of widths.

page-source-walk = Urban Street Design Guide, NACTO, 2013, de memoria
page-source-bicycle = LEED for Neighborhood Development, borrador de 2011, red de bicicletas
page-source-by-speed = SmartCode versión 9.2, 2009, tablas 3 y 4, de memoria

## Strips of the edited street section, by number.

page-strip = Franja { $number } de { $count }
page-strip-width-of = Ancho de la franja { $number } de { $count }
page-strip-to-left = Mover a la izquierda: franja { $number } de { $count }
page-strip-to-right = Mover a la derecha: franja { $number } de { $count }
page-strip-remove = Quitar la franja { $number } de { $count }
page-strip-narrow = { $strip }: { $width } es angosto; lo común es { $least } ({ $source }).

## The editor of the settings of walking.

page-walking = Ajustes
page-walking-speeds = Velocidades
page-walking-enough = Lo que cuenta, y las esperas
page-walking-places = Un lugar de ese tipo cuenta por pequeña que sea su superficie; los lugares que solo se esperan se distinguen en las cifras.
page-walking-pace-source = 3 millas por hora, un cuarto de milla en cinco minutos (R. Ewing, Pedestrian- and Transit-Friendly Design)
page-walking-own-source = elegido en este plan
page-walking-out-of-order = peatones más lentos: bajo, típico y alto deben crecer en este orden
page-walking-pace = Paso a pie del plan
page-walking-slower-low = Peatones más lentos, bajo
page-walking-slower-typical = Peatones más lentos, típico
page-walking-slower-high = Peatones más lentos, alto

## Where the default of a setting comes from.

page-default = Predeterminado { $value }: { $source }.
page-override-not-used = Un valor que el plan da a un factor no se usa y cuenta el de fábrica: { $fault }.
page-from-memory = { $source }, de memoria
page-trees = Árboles a lo largo de las calles
page-tree-spacing = Distancia entre árboles de la calle
page-common-practice = práctica común, sin fuente
page-allowance = Viviendas que permite la norma municipal
page-allowance-about = Tantas viviendas por el terreno que queda al descontar los derechos de vía y las partes indicadas del terreno con restricciones. Pida a su municipio sus propios números.
page-allowance-none = no se calcula ninguna hasta que aquí figure el número de su municipio
page-allowance-shares = Parte que se descuenta del terreno con cada tipo de restricción. El terreno con dos tipos cuenta para el primero.
page-allowance-source = Marshall Township, Pensilvania, sección 919, opción de conjunto agrupado

## What the browser refuses to the page.

page-request-failed = la solicitud falló
page-answer-no-text = la respuesta no es texto
page-no-worker = el navegador no inicia ningún proceso auxiliar
page-worker-unreadable = el proceso auxiliar recibió algo que no puede leer, de { $bytes } bytes
