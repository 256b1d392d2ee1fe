# Help by tool, and the first steps. Each line stands on a line of its own; letters in parentheses are keys of tools.

help-open = Ayuda
help-close = Cerrar
help-licenses = Licencias
help-first-title = Tres pasos para empezar
help-first =
    1. Dibuje el límite del sitio o sus calles: haga clic punto por punto; Intro termina.
    2. Dé un uso al suelo entre las calles (U) y un centro al lugar (P). Las cifras junto al dibujo siguen cada trazo.
    3. Pulse un número para ver de dónde sale; apunte a él para ver en el dibujo qué contó. La ayuda explica más sobre la herramienta en uso.
help-select =
    Haga clic en lo dibujado para elegirlo; con Mayús, o con un recuadro en terreno vacío, elija más.
    Arrastre una esquina o todo el trazo (una calle que hoy existe, una vez elegida); un punto a mitad de un tramo se vuelve esquina.
    La tarjeta junto a las herramientas mueve, gira, refleja, desplaza, corta y une lo elegido, y le da a todo una misma sección de calle o etapa.
    Las flechas lo mueven un poco; con Mayús, más lejos. Suprimir lo elimina; deshacer lo recupera.
help-area =
    Elija qué es el contorno: el sitio, un área tentativa, suelo con una restricción, una parcela o lo que queda fuera.
    Haga clic esquina por esquina; Intro o la primera esquina lo cierra, Retroceso quita una esquina.
    Un área tentativa también se abre arrastrando, como una burbuja: las viviendas aproximadas se cuentan antes de que exista una calle.
help-street =
    Elija una sección de calle y haga clic punto por punto; Intro termina, Retroceso quita un punto.
    El punto cae en calles, esquinas, ángulos rectos y manzanas iguales, y dice por qué; mantenga Alt para ponerlo libremente.
    Escriba un largo o un ángulo para el tramo siguiente. Curva lo dobla, Cuadrícula dibuja muchas calles a la vez, Cinta solo mide.
help-use =
    Elija un tipo de edificio y haga clic en suelo encerrado por calles: los lotes y edificios se trazan de inmediato. Arrastre para pintar varias manzanas.
    Haga clic cerca de un lado de una manzana para dar un tipo propio solo a ese lado.
    Abra el editor de una manzana para porciones, pisos, retiros y frentes comerciales.
help-place =
    Elija qué es el lugar y haga clic: un punto, un tramo de calle o una manzana entera para una plaza.
    Un lugar cuenta para las necesidades diarias cuando tiene el tamaño que la necesidad pide; Ajustes dice cuánto.
    Una cerca, dibujada punto por punto, puede pedir a los lotes a su lado un máximo de pisos.
    Una observación se fija del mismo modo; luego escriba lo que dice, hasta Intro, con Mayús e Intro para otra línea. Debajo de las cifras se enumera con su mesa y sus puntos, y se vincula con los pasos que le responden.
help-view =
    Arrastre para mover el dibujo; la rueda, dos dedos, + y − acercan y alejan; 0 lo muestra entero.
    Una vez que un lápiz dibuja en esta ventana, un dedo mueve el dibujo con cualquier herramienta.
    El mapa sobre el plan muestra tiempo a pie, necesidades, recorridos, densidad, etapas y más, uno a la vez.
