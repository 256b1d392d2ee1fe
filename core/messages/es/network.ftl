# Networks of streets: rules of counting, and what is wrong with a network.

## Rules by which nodes and links of a street network are counted, each told by what it counts.

network-rule-orlando = las calles se unen o terminan; se cuentan los enlaces que salen del sitio
network-rule-textbook = enlaces entre nodos: las calles se unen o terminan; solo se cuentan los enlaces entre dos nodos
network-rule-cary = tres o más ramas, o una calle sin salida
network-rule-durham = tres o más ramas, una curva cerrada o una calle sin salida; sin callejones
network-rule-greenville = tres o más ramas, o una calle sin salida; se cuentan los enlaces que salen del sitio
network-rule-leed = tres o más ramas en vías de paso, también senderos; sin calles sin salida
# Names of codes and ratings stay as they are; what stands in parentheses is a remark.
network-source-greenville = Greenville IL code, s 153.1068 (de los tramos por continuar y de los callejones el texto leído no dice nada: cuentan como calles)
network-source-leed = LEED 2009 for Neighborhood Development, definición de red de calles, NPDp3 y SLLc1 (no se aplica su tope a los cruces de vías sin vehículos, el 20 % del total)

## What is wrong with a network that the program was given; links and nodes have numbers.

network-node-missing = el enlace { $link } nombra el nodo { $node }, que no está en la lista
network-link-no-length = el enlace { $link } no tiene longitud
network-link-no-cost = el enlace { $link } no cuesta nada en un sentido
network-link-too-costly = el enlace { $link } es más largo o cuesta más de lo que un enlace puede
network-too-large = la red es demasiado grande para recorrerla
network-source-no-node = el nodo { $node } no está en la red
network-source-no-link = el enlace { $link } no está en la red
network-source-not-walkable = el enlace { $link } no se puede recorrer a pie
network-source-beyond = el tramo del enlace { $link } no queda dentro del enlace
network-source-too-high = un origen empieza en { $cost }, más de lo que un enlace puede costar
