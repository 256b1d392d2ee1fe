# What we heard, what changed: remarks pinned to the drawing, votes on them, and the steps that answer them. A dot is a
# vote, as dots are stuck to a sheet.

remarks-title = Qué escuchamos, qué cambió
remarks-count = { $count ->
    [0] Todavía no hay observaciones en el dibujo.
    [one] { $open ->
        [0] 1 observación, respondida.
       *[other] 1 observación, aún sin respuesta.
    }
   *[other] { $open ->
        [0] { $count } observaciones, todas respondidas.
       *[other] { $count } observaciones, { $open } aún sin respuesta.
    }
}
remarks-sort = En orden de
remarks-by-votes = puntos
remarks-by-table = mesa
remarks-by-number = número en el dibujo
remarks-write = Escribir una observación
remarks-text = Guardar como texto
remarks-dots = { $count ->
    [one] { $count } punto
   *[other] { $count } puntos
}
remarks-dots-of = { $count } de { $present } puntos
remarks-open = Aún sin respuesta.
remarks-answered = respondida
remarks-answer = Responder
remarks-answer-about = Lo que dibuje ahora queda vinculado a esta observación. Los pasos anteriores se vinculan aquí o en el historial.
remarks-answering = Respondiendo a la observación { $number }
remarks-answering-said = Respondiendo a la observación { $number }. Lo que dibuje ahora queda vinculado a ella.
remarks-answering-none = No se está respondiendo a ninguna observación.
remarks-done = Terminar la respuesta
remarks-moment = antes de la observación { $number }
remarks-link-step = Un paso anterior
remarks-link = Vincular
remarks-link-selected = Vincular lo seleccionado
remarks-select-first = Seleccione primero en el dibujo lo que responde a la observación.
remarks-link-what = Vincular: { $what }
remarks-unlink-what = Desvincular: { $what }
remarks-changes = Cambió desde entonces, más que el redondeo y el rango:
remarks-keep = Guardar estas cifras con la observación
# A figure and its change, such as "Homes: 12 homes more".
remarks-figure = { $figure }: { $change }
# A step of the history in the list of those that can be linked.
remarks-step = { $number }: { $step }
remarks-step-elsewhere = { $step } ({ $alternative })
remarks-gone = Lo que se vinculó ya no está.
remarks-text-title = Qué escuchamos, qué cambió: { $plan }
remarks-step-link = vincular a observación
remarks-step-unlink = desvincular de observación
remarks-step-figures = guardar cifras con observación
