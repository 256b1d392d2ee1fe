# Una imagen bajo el dibujo (imagen de base): un levantamiento, una vista aérea, la foto de un mapa en papel.

picture-title = Imagen bajo el dibujo
picture-choose = Poner una imagen bajo el dibujo
picture-another = Otra imagen
picture-remove = Quitarla
picture-fade = Cuánto se ve
picture-by-points = Colocarla por puntos
picture-by-length = Indicar una longitud conocida
picture-done = Listo
picture-back = Dejarla como estaba
picture-length-field = Longitud entre los dos puntos
picture-begin = Calcar una imagen
picture-begin-about = Ponga bajo el dibujo un levantamiento, una vista aérea o la foto de un mapa
picture-first-place = Pulse en la imagen un lugar que conozca en el plan.
picture-next-place = { $count ->
    [one] Desplazada por un par de puntos. Pulse un segundo lugar para girar y escalar la imagen, o pulse Listo.
    [2] Colocada por dos pares de puntos. Un tercero estira la imagen y un cuarto endereza una foto; o pulse Listo.
    [3] Colocada por tres pares de puntos. Un cuarto endereza una foto; o pulse Listo.
   *[other] Colocada por { $count } pares de puntos. Pulse Listo.
}
picture-where = Ahora pulse dónde está ese lugar en el plan.
picture-length-from = Pulse un extremo de una longitud que conozca.
picture-length-to = Pulse el otro extremo.
picture-length = Escriba cuánto mide.
picture-no-length = Pulse los dos extremos de una longitud y escríbala como un número, por ejemplo 120.
# world es el nombre del archivo de georreferencia; moved es yes si el plan no tenía origen.
picture-laid = { $moved ->
    [yes] { $file } está donde dice { $world }. El plan aún no estaba en ningún lugar de la Tierra; su origen queda en el centro de la imagen.
   *[no] { $file } está donde dice { $world }.
}
picture-far = { $file } quedaría a más de { $kilometers } km del plan o sería mayor de lo que puede ser un plan. El lugar del plan y el sistema de coordenadas de la imagen no concuerdan.
picture-not-read = { $file } no es una imagen que este navegador pueda mostrar; sí lo son PNG, JPEG y WebP. Si es un PDF, guarde antes la página como imagen.
picture-not-shown = Este navegador no puede mostrar la imagen bajo el dibujo; sigue en el plan.
# Nombres de los pasos del historial.
picture-step-lay = poner imagen
picture-step-remove = quitar imagen
picture-step-fade = atenuar imagen
picture-step-place = colocar imagen
