# Drawings for other programs: names of layers, and what stands around the drawing.

## Layers, for people. Uses of land and water have the words of the drawing.

export-layer-ground = terreno del sitio
export-layer-second-use = segundo uso
export-layer-soft-areas = áreas tentativas, antes de trazar calles
export-layer-constraints = lo que restringe el suelo
export-layer-right-of-way = derechos de vía
export-layer-planting = franjas plantadas
export-layer-curbs = calzadas entre bordillos
export-layer-lanes = carriles, ciclovías y medianas
export-layer-center-lines = ejes de calle
export-layer-removed = calles por retirar
export-layer-lots = lotes
export-layer-buildings = edificios
export-layer-trees = árboles de calle
export-layer-parcels = parcelas
export-layer-barriers = lo que no se puede cruzar a pie
export-layer-site = límite del sitio
export-layer-accesses = conexiones con calles existentes
export-layer-places = lugares
export-layer-contours = curvas de nivel
export-layer-index-contours = curvas de nivel, una de cada cinco
export-layer-contour-heights = alturas de las curvas de nivel
export-layer-names = nombres
export-layer-sheet = título, escala, leyenda y nota

## Around the drawing.

# The letter of the north arrow.
export-north = N
export-scale = Escala 1:{ $scale }
# feet and scale are numbers.
export-scale-feet = 1 pulgada = { $feet } pies (1:{ $scale })
export-note = Boceto a nivel de planificación, no apto para construcción: los lotes y edificios se trazan por regla, y el acceso de bomberos, el drenaje, las pendientes, la visibilidad, las estructuras, los estudios de tránsito y la reutilización del agua quedan a cargo de los códigos locales y de profesionales con licencia.
# interval and spacing are numbers, unit the word for both; source is a sentence and may be empty.
export-contours-about = Curvas de nivel cada { $interval } { $unit }, una de cada cinco más gruesa y con su altura en { $unit }. De una cuadrícula de alturas con un punto cada { $spacing } { $unit }, no de un levantamiento topográfico: el drenaje, la nivelación y el suelo empinado o inestable corresponden a profesionales autorizados. { $source }
# Above it stands what unit the drawing is in.
export-units-meters = Una unidad de este dibujo es un metro en el plano propio del plan, en torno al lugar que indica el archivo del plan.
export-units-feet = Una unidad de este dibujo es un pie internacional en el plano propio del plan, en torno al lugar que indica el archivo del plan.
