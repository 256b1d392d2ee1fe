# Entregar un plan: en una dirección, como código para cámaras, con la página en un archivo.

share-open = Compartir
share-address = Dirección de este plan
share-address-length = { $count ->
    [one] Todo el plan está en esta dirección de un carácter; al abrirla no se pide el plan a ningún servidor.
   *[other] Todo el plan está en esta dirección de { $count } caracteres; al abrirla no se pide el plan a ningún servidor.
}
share-no-address = Esta página se abrió desde el disco y no se le indicó dónde está publicada, así que no puede formar una dirección que otras personas puedan abrir. En su lugar, guarde la página con el plan dentro: un solo archivo es la herramienta y el plan.
share-left-out = No va en la dirección:
share-copy = Copiar la dirección
share-hand-on = Enviar
share-save-page = Guardar la página con este plan
share-copied = Se copió la dirección.
share-not-copied = El navegador no permite que esta página copie; seleccione la dirección de arriba y cópiela usted.
share-not-handed-on = La dirección no se envió.
share-code = Código de la dirección, para cámaras
share-code-large = Mostrar el código en grande
share-no-code = La dirección es demasiado larga para un código que se pueda leer desde la sala; comparta la dirección o guarde el plan como archivo.
share-close = Cerrar
share-no-page = La página no está en un solo archivo, así que no se puede guardar con un plan dentro.
share-this-file = El plan de este archivo
share-files = Archivos para otros programas
share-scale = Escala de los dibujos
share-scale-feet = 1 pulgada : { $feet } pies
share-svg = Dibujo, SVG
share-dxf = Dibujo, DXF
share-png-150 = Imagen, 150 puntos por pulgada
share-png-300 = Imagen, 300 puntos por pulgada
share-geojson = Todo lo derivado, GeoJSON
share-csv = Todas las cifras, CSV
share-png-too-large = La imagen es más grande de lo que este navegador puede formar; elija una escala menor o menos puntos por pulgada.
