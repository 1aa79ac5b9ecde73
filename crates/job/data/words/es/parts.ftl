# Spanish, from memory: not yet read by a native founder.

# What is put into remarks and labels: reasons, elements, things done.

## Advice that several remarks share

proved-by-test = encargue su diseño y su comprobación por ensayo a un profesional habilitado y según la norma de su lugar
compare-the-volume = reparado; compare el volumen con el de su dibujo
mend-before-printing = demasiado poco para que importe al metal; repárelo antes de imprimir el modelo

## Solids of a part

solid-named = "{ $name }"
solid-numbered = sólido { $number }
the-part = la pieza

## Scrap by what it was, as in crates/metal/data/scrap.toml

scrap-radiator = soldado con plomo, o sucio de él; vacíe el refrigerante: es venenoso y salpica
    .name = radiador
scrap-house-radiator = la pintura vieja tiene plomo y los huecos guardan agua: rómpalo y decápelo primero
    .name = radiador de casa
scrap-piston = saque bulones y segmentos: son de acero
    .name = pistón
scrap-engine-block = desengráselo; busque espárragos de acero y camisas de agua tapadas
    .name = bloque de motor
scrap-wheel = quite las pesas de equilibrado (plomo o cinc), las válvulas y la pintura; "mag" puede querer decir magnesio
    .name = rueda
scrap-saw-housing = las carcasas ligeras suelen ser de magnesio: vinagre en un punto limado lo dice
    .name = carcasa de sierra
scrap-tap = con plomo para que se tornee bien, y cromado; abra todo hueco cerrado
    .name = grifo
scrap-door-handle = el recubrimiento y las piezas viejas a presión pueden tener cadmio y plomo
    .name = manija de puerta
scrap-pipe = corte los dos extremos antes de calentar: un tubo cerrado revienta
    .name = tubo
scrap-pan = las ollas caseras transmiten aquello de lo que se hicieron; los antiadherentes dan humos venenosos
    .name = cazuela
scrap-can = hasta la mitad se pierde en escoria; el barniz humea; aplástelas secas, nunca con líquido dentro
    .name = lata
scrap-brake-disc = el polvo de freno de coches viejos puede tener amianto: lávelo con agua
    .name = disco de freno
scrap-bath = el esmalte salta en caliente y puede tener plomo: rómpalo primero al aire libre
    .name = bañera
scrap-propeller = los metales de cojinete tienen plomo; las herramientas antichispa y los muelles pueden tener berilio: nunca los funda
    .name = hélice
scrap-wire = pélelo, nunca lo queme: el humo del aislante es venenoso, las fundas viejas son de plomo
    .name = cable
scrap-battery = plomo: un crisol que lo tuvo no sirve para nada más; deje las baterías cerradas
    .name = batería
scrap-mixed = nadie sabe qué hay dentro: pruebe cada pieza
    .name = mezclada

## What was mended in a mesh

points-joined = { $count } puntos cercanos unidos
collapsed-dropped = { $count } facetas colapsadas eliminadas
doubles-dropped = { $count } facetas dobles eliminadas
needles-mended = { $count } facetas sin área reparadas
slits-zipped = { $count } rendijas cerradas
holes-closed = { $count } agujeros pequeños cerrados
faces-closed = { $count } abertura(s), con caras enteras entre ellas, cerradas en plano
facets-turned = { $count } facetas volteadas
shells-turned = { $count } cáscaras vueltas con la cara hacia fuera
flakes-dropped = { $count } láminas sin espesor eliminadas
crossings-joined = lo que se solapa o se cruza, unido: volumen { $before } antes, { $after } después

## Why a flask does not take the patterns

no-flasks = el taller no tiene caja de moldeo: anote las suyas en shop.toml bajo [[flask]]
flask-unknown = la caja "{ $flask }" no está en la lista del taller; hay: { $known }
flask-too-small = la caja "{ $flask }" es demasiado pequeña para { $count } modelo(s) con { $wall } de arena en las paredes: se necesita por dentro { $inside }, caja superior { $cope }, caja inferior { $drag }
flasks-too-small = todas sus cajas son demasiado pequeñas para { $count } modelo(s) con { $wall } de arena en las paredes: se necesita por dentro { $inside }, caja superior { $cope }, caja inferior { $drag }

## Elements, by their symbols

element-C = carbono
element-Si = silicio
element-Mn = manganeso
element-P = fósforo
element-S = azufre
element-Cr = cromo
element-Fe = hierro
element-Al = aluminio
element-Mg = magnesio
element-Cu = cobre
element-Zn = zinc
element-Sn = estaño
element-Pb = plomo
element-Ni = níquel
element-Ti = titanio
element-Sb = antimonio
element-Cd = cadmio
element-Bi = bismuto
element-CE = carbono equivalente
