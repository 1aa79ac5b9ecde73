# Spanish, from memory: not yet read by a native founder.

# What is put into remarks and labels: reasons, elements, things done.

## Advice that several remarks share

proved-by-test = encargue su diseño y su comprobación por ensayo a un profesional habilitado y según la norma de su lugar
compare-the-volume = reparado; compare el volumen con el de su dibujo
mend-before-printing = demasiado poco para que importe al metal; repárelo antes de imprimir el modelo

## What was mended in a mesh

points-joined = { $count } puntos cercanos unidos
collapsed-dropped = { $count } facetas colapsadas eliminadas
doubles-dropped = { $count } facetas dobles eliminadas
needles-mended = { $count } facetas sin área reparadas
slits-zipped = { $count } rendijas cerradas
holes-closed = { $count } agujeros pequeños cerrados
facets-turned = { $count } facetas volteadas
shells-turned = { $count } cáscaras vueltas con la cara hacia fuera
flakes-dropped = { $count } láminas sin espesor eliminadas

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
