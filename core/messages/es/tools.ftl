## The tools of the rail, where a word has room for about nine letters.

tools-select = Elegir
tools-street = Calle
tools-use = Uso
tools-area = Área
tools-place = Lugar
tools-view = Vista
tools-view-awaits = Arrastre para mover el dibujo; gire la rueda u oprima + y − para acercar o alejar.

## What a step is called in the history; it follows "Undo:" and begins sentences of its own.

tools-step-draw-street = dibujar calle
tools-step-draw-blocks = dibujar cuadrícula de manzanas
tools-step-move-street = mover calle
tools-step-move-corner = mover vértice
tools-step-add-corner = agregar vértice
tools-step-move-place = mover lugar
tools-step-delete-street = eliminar calle
tools-step-delete-corner = eliminar vértice
tools-step-delete-place = eliminar lugar
tools-step-clear-use = quitar uso
tools-step-paint-type = pintar { $name }
tools-step-paint-use = pintar uso
tools-step-soft-area = dibujar área tentativa
tools-step-constraint = dibujar restricción
tools-step-parcel = dibujar parcela
tools-step-outside = dibujar entorno exterior
tools-step-barrier = dibujar barrera
tools-step-site-access = colocar acceso al sitio
tools-step-crossing = colocar cruce
tools-step-note = colocar nota
tools-step-place = agregar lugar
tools-step-draw-site = dibujar límite del sitio
tools-step-move-site = cambiar límite del sitio
tools-step-move-mark = mover área o marca
tools-step-delete-mark = eliminar área o marca
tools-step-move-selection = mover selección
tools-step-delete-selection = eliminar selección
tools-step-duplicate = duplicar
tools-step-turn = girar
tools-step-mirror = reflejar
tools-step-cut = cortar calle
tools-step-join = unir calles
tools-step-offset = desplazar calle en paralelo
tools-step-round = redondear vértice

## What a tool waits for, below the drawing. A letter in parentheses is the key of a tool.

tools-site-first = Haga clic en el primer vértice del sitio.
tools-site-done = El sitio está dibujado; arrastre sus vértices para cambiarlo. Siguen un centro (P), las áreas tentativas y las restricciones aquí, o las calles (S).
tools-soft-first = Haga clic en el primer vértice del área tentativa, o presione y arrastre para trazar una burbuja.
tools-area-first = Haga clic en el primer vértice del contorno.
tools-area-done = Dibujada; póngale nombre y más datos en el panel, o haga clic en el primer vértice de la siguiente.
tools-line-first = Haga clic donde empieza la barrera.
tools-corner-next = Haga clic en el siguiente vértice. Escape abandona.
tools-line-more = Haga clic en el siguiente vértice. Intro, u otra vez el último vértice, termina la línea; Retroceso quita un vértice.
tools-outline-more = Haga clic en el siguiente vértice. Intro, u otra vez el primer vértice, cierra el contorno; Retroceso quita un vértice.
tools-bubble = Arrastre hasta que la burbuja tenga el tamaño deseado y suelte.
tools-corner-held = Suelte para dejar el vértice. Escape lo devuelve a su lugar.

## The ways to draw streets, two beside each other: short words.

tools-straight = Por puntos
tools-curve = Curva
tools-blocks = Cuadrícula
tools-tape = Cinta

## What the place tool waits for.

tools-center = Haga clic en una calle para un punto, arrastre a lo largo de ella para un tramo, o haga clic en una manzana para una plaza. En otro lugar queda donde haga clic.
tools-place-first = Haga clic donde está; arrastre a lo largo de una calle para un tramo.
tools-access = Haga clic en el límite del sitio, de preferencia donde una calle lo cruza.
tools-access-no-site = Un acceso al sitio va sobre el límite del sitio: dibújelo primero (A).
tools-crossing = Haga clic en una calle o barrera, de preferencia donde se cruzan.
tools-note = Haga clic donde va prendida la nota y luego escriba lo que dice.
tools-square = Haga clic para hacer de esta manzana su plaza.
tools-stretch = Arrastre a lo largo de la calle para un tramo, o suelte.

## What the select tool waits for.

tools-select-resting = Clic para elegir, Mayús agrega. Arrastre para mover; en suelo vacío o con Mayús, recuadro.
tools-select-boxing = Suelte para seleccionar todo lo que queda dentro. Escape abandona.
tools-select-cutting = Haga clic donde se corta la calle. Escape abandona.
tools-select-pressed = Arrastre para mover.
tools-select-carried = Muévalo; Intro o un clic lo deja ahí. Escape lo devuelve a su lugar.
tools-select-moving = Suelte para dejarlo ahí. Escape lo devuelve a su lugar.

## Said beside the pointer.

tools-cut-here = cortar aquí
tools-length = { $length }
tools-radius = radio { $length }
tools-tape-length = total { $length }
tools-tape-area = total { $length }, superficie { $area }
# A grid of blocks: how many along and across, and their length and depth.
tools-grid = { $along } × { $across } manzanas de { $length } por { $depth }
tools-grid-by-street = { $along } × { $across } manzanas de { $length } por { $depth }, alineadas con una calle
tools-grid-by-edge = { $along } × { $across } manzanas de { $length } por { $depth }, alineadas con el borde del sitio

## Commands on what is selected.

tools-duplicate = Duplicar
tools-turn-left = Girar a la izquierda
tools-turn-right = Girar a la derecha
tools-mirror-sideways = Reflejar a lo ancho
tools-mirror-upright = Reflejar de arriba abajo
tools-cut = Cortar en dos
tools-join = Unir dos calles
tools-offset-left = Paralela a la izquierda
tools-offset-right = Paralela a la derecha

## Why a point lands where it does, beside the point.

tools-snap-intersection = intersección
tools-snap-street-end = fin de calle
tools-snap-corner = vértice
tools-snap-own-start = de vuelta al inicio
tools-snap-on-street = sobre la calle
tools-snap-site = límite del sitio
tools-snap-edge = borde
tools-snap-extension = sigue la calle
tools-snap-straight-on = en línea recta
tools-snap-square = ángulo recto
tools-snap-parallel = paralela a la calle
tools-snap-guides = cruce de guías
tools-snap-equal-block = manzana igual
tools-snap-typed = según lo escrito
tools-snap-free = libre

## What the street tool waits for.

tools-street-first = Haga clic en el primer punto.
tools-street-opposite = Haga clic en la esquina opuesta. Escape abandona.
tools-tape-next = Haga clic en el siguiente punto; Intro termina.
tools-street-next = Haga clic en el siguiente punto. Escape abandona.
tools-street-more = Haga clic en el siguiente punto; Intro, u otra vez el último punto, termina; Retroceso quita uno.

## What the use tool waits for.

tools-use-painting = Pase por más manzanas, o suelte.
tools-use-side = Haga clic para pintar este lado. Alt pinta toda la manzana.
tools-use-block = Haga clic para pintar esta manzana. Cerca de una calle se pinta uno de sus lados.
tools-use-resting = Haga clic dentro de un terreno que encierren las calles o el límite del sitio.
