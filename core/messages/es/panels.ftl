## Words on many buttons.

panels-delete = Eliminar
panels-save = Guardar
panels-show = Mostrar
panels-draw = Dibujar
panels-show-what = Mostrar en el dibujo: { $what }

## The menu of alternatives.

panels-alternatives = Alternativas
panels-alternatives-files = Los archivos de varias mesas, abiertos juntos, quedan aquí lado a lado.
panels-alternatives-about = Todas las formas de trazar el sitio, como planos pequeños
panels-alternative-copy = Hacer una copia
panels-alternative-earlier = Adelantar

## The bar.

panels-history = Historial
panels-undo = Deshacer
panels-redo = Rehacer
panels-plan = Plan
panels-open = Abrir…
panels-samples = Ejemplos
panels-units = Unidades
panels-units-us = Pies, acres
panels-units-metric = Métrico

## The basis of a figure.

panels-basis-doubt = De dónde viene su incertidumbre
panels-basis-changed = Se apoya en factores cambiados: { $factors }
# A term of a weighted mean.
panels-basis-weighed = { $label }: { $value }, peso { $weight }
# Rows or terms that are not listed.
panels-basis-more = y { $count } más
panels-basis-zeros = { $count ->
    [one] cero en { $count } lugar más
   *[other] cero en otros { $count } lugares
}
panels-basis-rows = { $count ->
    [one] La otra fila
   *[other] Las otras { $count } filas
}

## The column of figures.

panels-figures = Cifras
panels-figures-note = cada número abre su origen
panels-caution = Resultados a nivel de planificación, de un dibujo inventado o sin terminar. El acceso de bomberos, el drenaje, las pendientes, las distancias de visibilidad, las estructuras y el tráfico corresponden a los códigos locales y a profesionales con licencia.
panels-program = Programa
# What is drawn next.
panels-next = Siguiente: { $what }

## Read out by screen readers: what kind of thing the canvas is.

panels-drawing = dibujo

## The editors.

panels-editor = Editor
panels-cut = Corte de la calle
# Buttons that step a number.
panels-less = Menos: { $what }
panels-more = Más: { $what }

## Figures enlarged for the back of the room.

panels-enlarged = Cifras ampliadas
# An opened basis stays open while others are opened and closed.
panels-pin = Fijar
panels-pin-what = Fijar: { $what }
panels-enlarge = Ampliar para la sala
panels-no-longer-enlarged = Dejar de ampliar: { $what }
# The unit beside a field.
panels-feet = ft

## What can be done with a phase.

panels-phase-earlier = Adelantar

## The menu of the history.

panels-replay-stop = Detener
panels-replay = Reproducir
panels-history-back = Lo que se dibuje ahora ocupará el lugar de los pasos posteriores. Si aún los quiere, guárdelos antes como alternativa.
panels-history-begin = Como se abrió
panels-moment-name = Comparar con este momento, llamado
panels-moment-mark = Marcar
panels-moment-forget = Dejar de comparar
panels-moment-compared = Comparado con: { $name }.

## Ways to go on with a plan that this browser keeps no longer.

panels-keep-as-copy = Seguir con una copia
panels-open-kept-again = Abrir lo que guardó la otra ventana

## What can be drawn.

panels-site = Límite del sitio
panels-soft-area = Área tentativa
panels-parcel = Parcela
panels-outside = Entorno exterior
panels-site-access = Acceso al sitio
panels-barrier = Barrera o cerca
panels-crossing = Cruce
panels-note = Nota
panels-land-bar = El suelo del sitio

## The legend.

panels-legend = Leyenda
panels-legend-lots = Lotes y edificios, de cerca
panels-legend-no-lot = Suelo fuera de los lotes

## How streets are drawn.

panels-block-length = Largo de manzana
panels-block-depth = Fondo de manzana
panels-about-blocks = De eje a eje de las calles.
panels-snap = Ajuste (mantenga Alt para suspenderlo)

## The map over the plan.

panels-map = Mapa sobre el plan
panels-map-walks = Tiempo a pie
panels-map-rules = Intersecciones contadas

## What of the plan is measured.

panels-measured = Se mide
panels-without-unwilling = Sin el suelo de propietarios no dispuestos
panels-settings = Ajustes
panels-measured-part = Todos los números aquí: { $what }.

## Notes on the plan.

panels-notes-open = Pendiente en el dibujo
panels-notes-codes = Para los códigos locales y profesionales con licencia

## The palettes.

panels-section = Sección de calle
panels-section-edit = Editar esta sección de calle
panels-brush-nearest = El lado si está cerca; si no, la manzana
panels-brush-whole = Toda la manzana
panels-brush-side = Un solo lado
panels-paint = Pintar
panels-building-type = Tipo de edificio
panels-no-use = Sin uso
panels-no-use-about = Quita lo que hay ahí.
panels-building-type-edit = Editar este tipo de edificio

## The menu of the plan.

panels-phase-add = Agregar una etapa
panels-plan-about = Nombre, ubicación y etapas del plan

## The card of the program.

panels-program-about = Escriba lo que se pide; deje vacío lo que no.
panels-program-asked = pedido
panels-program-drawn = dibujado
panels-program-left = faltante
panels-program-done = Listo
panels-tools = Herramientas

## The panel of what is selected.

panels-selection = Selección
panels-radius = Radio de la esquina
panels-turn-mirror = Girar, reflejar
panels-turn-mirror-offset = Girar, reflejar, paralela
panels-turn-by = Girar
panels-offset-by = Desplazar
panels-move = Mover
panels-selection-about = Las flechas la mueven un poco; con Mayús, más. Mayús y un clic agregan a ella.
panels-radius-most = Aquí caben hasta { $length }.
# The key of the keyboard that deletes.
panels-key-delete = Supr

## The line below the drawing.

panels-by-keys = Las flechas mueven el punto; Intro lo pone.
panels-zoom = Zoom
panels-zoom-out = Alejar
panels-zoom-fit = Ver todo
panels-zoom-in = Acercar

## Fields for the next run of a street.

panels-typed-length = Longitud
panels-typed-length-about = Longitud del siguiente tramo. Intro fija el punto, Escape borra.
panels-typed-bearing = Rumbo
panels-typed-bearing-about = Grados en el sentido de las agujas del reloj desde el norte; con + o −, desde el tramo anterior.
panels-typed = Siguiente tramo

## Ways to begin.

panels-begin-site = El sitio
panels-begin-site-about = Dibuje su límite; luego un centro, áreas tentativas y lo que restringe el suelo.
panels-begin-streets = Calles
panels-begin-streets-about = Dibuje de una vez la primera calle; el límite puede venir después.
panels-begin = Comience con
panels-begin-samples = O vea
panels-begin-blank = Una hoja en blanco
panels-begin-program = El programa…
panels-begin-file = Un archivo propio…

## Plans that this browser keeps.

panels-forget-for-good = Olvidar para siempre
panels-forget = Olvidar…
panels-keep = Conservar
panels-go-on = Continúe con
panels-forget-plan = Olvidar { $name }
panels-lasting = Este navegador los guarda hasta que usted los quite.
panels-not-lasting = Si falta espacio, este navegador puede borrarlos.
panels-ask-to-last = Pídale que los guarde
