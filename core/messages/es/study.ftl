# What the study of an open plan says: why it can not work, what a drawing leaves open, and cautions.

study-fault = no se pueden calcular las cifras: { $faults }
study-no-figure = no hay ninguna cifra `{ $id }`
study-no-factor = no hay ningún factor `{ $id }`
study-news-unreadable = no se puede leer lo que se comunicó del plan
study-moment-unreadable = no se puede leer el momento marcado

## What the drawing leaves open, in lists of notes and behind "note: " on the command line.

# Stands in parentheses behind a note, by itself or behind a place and a semicolon. A mark is anything drawn.
study-note-mark = marca { $mark }
# A use painted on a block that is not enclosed any more; it wakes when it is.
study-note-asleep = un uso está en suspenso: ninguna calle lo rodea por completo
study-note-outside-site = un uso queda fuera del sitio: no se cuenta nada de él; las viviendas, empleos y comercios de fuera pueden dibujarse como entorno exterior
study-note-closed-in = nadie puede llegar aquí a pie: entre este lugar y todas las calles hay una barrera o un suelo que no se puede cruzar a pie
study-note-no-lot = una manzana para edificar no tiene ningún lote: no llega a ella ninguna calle a la que sus lotes puedan dar frente, o es demasiado pequeña; no se cuentan en ella viviendas, empleos ni superficie construida
study-note-no-boundary = no se ha dibujado el límite del sitio: se cuenta como sitio el suelo que las calles encierran y el que cubren las áreas tentativas
# reason is measures-no-center or what is wrong with the network of walks.
study-note-no-walk = no se puede calcular el recorrido a pie hasta un centro: { $reason }
study-note-rough-homes = las viviendas aproximadas de áreas tentativas no tienen camino a pie hasta que se tracen calles allí: las proporciones de viviendas con camino a pie las cuentan como fuera de alcance

## Cautions: what lies where, and whom to ask there. Local codes and licensed practice decide, never this program.
## "here" is the place the caution is shown at.

study-caution-dead-ends = { $count ->
    [one] una calle sin salida mide más de 150 ft (46 m): pregunte al jefe de prevención de incendios dónde da la vuelta un camión de bomberos
   *[other] { $count } calles sin salida, la más larga aquí, miden más de 150 ft (46 m): pregunte al jefe de prevención de incendios dónde da la vuelta un camión de bomberos
}
# homes is more than most, which is 30.
study-caution-one-way = un solo acceso lleva a { $homes } viviendas, más de { $most }: pregunte al jefe de prevención de incendios si hace falta un segundo acceso
study-caution-block-floodplain = { $count ->
    [one] una manzana pintada se extiende sobre zona inundable: pregunte al administrador de zonas inundables qué se permite construir allí
   *[other] { $count } manzanas pintadas, una de ellas aquí, se extienden sobre zona inundable: pregunte al administrador de zonas inundables qué se permite construir allí
}
study-caution-block-wetland = { $count ->
    [one] una manzana pintada se extiende sobre humedal: pregunte a la autoridad de humedales dónde está su borde
   *[other] { $count } manzanas pintadas, una de ellas aquí, se extienden sobre humedal: pregunte a la autoridad de humedales dónde está su borde
}
study-caution-block-steep = { $count ->
    [one] una manzana pintada se extiende sobre terreno empinado: pregunte a un ingeniero geotécnico qué puede soportar la ladera
   *[other] { $count } manzanas pintadas, una de ellas aquí, se extienden sobre terreno empinado: pregunte a un ingeniero geotécnico qué puede soportar la ladera
}
study-caution-street-floodplain = { $count ->
    [one] una calle cruza zona inundable: pregunte al administrador de zonas inundables a qué altura debe quedar una calle
   *[other] { $count } calles, una de ellas aquí, cruzan zona inundable: pregunte al administrador de zonas inundables a qué altura debe quedar una calle
}
study-caution-street-wetland = { $count ->
    [one] una calle cruza humedal: pregunte a la autoridad de humedales si se permite que una calle lo cruce
   *[other] { $count } calles, una de ellas aquí, cruzan humedal: pregunte a la autoridad de humedales si se permite que una calle lo cruce
}
study-caution-street-steep = { $count ->
    [one] una calle cruza terreno empinado: pregunte a un ingeniero civil por la pendiente y los taludes
   *[other] { $count } calles, una de ellas aquí, cruzan terreno empinado: pregunte a un ingeniero civil por la pendiente y los taludes
}
study-caution-street-water = { $count ->
    [one] una calle cruza agua: pregunte a un ingeniero estructural por el puente o la alcantarilla
   *[other] { $count } calles, una de ellas aquí, cruzan agua: pregunte a un ingeniero estructural por el puente o la alcantarilla
}
