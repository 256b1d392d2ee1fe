# Lo que se dice cuando los datos de base leídos se incorporan al plan.

bases-step = incorporar datos de base
bases-taken = Incorporado de { $file }: calles { $streets }, lugares { $places }, terrenos restringidos { $areas }, barreras { $barriers }, edificios { $buildings }, parcelas { $parcels }.
bases-left-out = Sin incorporar: { $beyond } fuera del área, { $unfitting } de otra forma que la pedida, { $known } que el plan ya tiene. Huecos rellenados: { $holes }.
bases-no-extent = La distancia debe ser un número de 0 a { $kilometers } km.
bases-no-site = Aún no se ha dibujado ningún sitio. Elija en su lugar una distancia alrededor del origen del plan.
bases-no-unit = La unidad debe ser mayor que 0 metros, y el giro un número de grados.
bases-placed = El plan ya tiene una ubicación. Su origen se queda donde está.
bases-nothing-chosen = No se ha elegido nada que se pueda incorporar. Elija capas y en qué se convierten.
bases-nothing-within =
    { $count ->
        [one] El único elemento elegido está fuera del área o demasiado lejos del plan.
       *[other] Los { $count } elementos elegidos están fuera del área o demasiado lejos del plan.
    }
bases-all-known =
    { $count ->
        [one] El plan ya tiene el único elemento elegido.
       *[other] El plan ya tiene los { $count } elementos elegidos.
    }
bases-too-many = Se incorporarían más de { $limit } elementos, más de los que permiten dibujar un plan. Elija un área más pequeña o menos capas.
bases-old-module = La parte de la página que lee datos de base es de otra versión. Vuelva a cargar la página.
bases-no-worker = El navegador no inicia ningún proceso auxiliar, que hace falta para leer datos de base.
bases-stopped = La lectura se detuvo: { $fault }
