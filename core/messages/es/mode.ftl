# Cómo se dispone la página: para qué lugar, y si el plan solo se mira.

mode-menu = Página
mode-title = Disponer la página para
mode-desk = Un escritorio
mode-desk-about = Todo a mano para una persona que dibuja.
mode-projector = Un proyector
mode-projector-about = Palabras, líneas y tres cifras se dibujan grandes, para leerlas desde el fondo de una sala.
mode-board-left = Una pizarra táctil, herramientas a la izquierda
mode-board-right = Una pizarra táctil, herramientas a la derecha
mode-board-about = Botones grandes en la parte baja de la pizarra; todo responde a un toque. Una vez que un lápiz dibuja aquí, los dedos solo mueven la vista, hasta que este menú los deje dibujar otra vez.
# Cada línea va en un renglón propio.
mode-board-keys =
    Teclas de un control o teclado inalámbrico:
    Av Pág termina lo que se dibuja.
    Re Pág deshace el último punto o paso.
    B o el punto lo rehace.
    F5 o Escape abandona lo empezado.
mode-pen-draws = El lápiz dibuja, los dedos solo mueven la vista
mode-look-only = Solo mirar: nada se puede cambiar
mode-looking = Está mirando este plan. Nada de lo que haga aquí lo cambia.
mode-looking-next = Lo que abra ahora será solo para mirarlo.
mode-look-at = Vea
mode-make-own = Hacerlo mío
mode-own = Ya puede cambiar el plan.
mode-refused = Este plan solo se está mirando. Pulse «Hacerlo mío» para cambiarlo o para abrir otro.
mode-by-tap = Lo que se está dibujando
mode-finish = Terminar
mode-key-finish = Av Pág
mode-give-up = Abandonar
mode-key-give-up = Esc
mode-key-undo = Re Pág
mode-key-redo = B
