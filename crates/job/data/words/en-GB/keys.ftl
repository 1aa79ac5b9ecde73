# What is typed in a job's file, as the sheet calls it.

key-name = name of the job
key-date = day of the pour
key-alloy = alloy
key-count = castings in one mould
key-serves = what it serves for
key-form = form of the stock
key-loss = melt loss
key-pig = kept for the ingot mould
key-flask = flask
key-unit = unit of the mesh
key-up = which way of it is up
key-from = what the mesh is of
key-contraction = your own contraction
key-machined = faces are machined
key-rapped = the pattern is rapped well
key-printed = printed in layers of
key-joint = height of the joint
key-sprue = place of the sprue
key-gates = places of the gates
key-feeders = places of the feeders
key-pour-height = height from joint to basin

## The words that may be chosen

said-ornament = to look at
said-machine = in a machine
said-food = for food or drink
said-pressure = holds pressure
said-lifting = lifts, or holds a person
said-brake = stops something
said-ingot = ingot, clean returns
said-heavy = castings broken up
said-thin = sheet, painted or oily
said-swarf = turnings, filings
said-cans = drink cans
said-part = the part as it is wanted
said-worn-original = a worn original

## The shop

key-units = units that stand first
key-words = language, and British or American words
key-furnace = kind of furnace
key-heap-mass = sand in the heap
key-heap-bond = what binds it
key-heap-moisture = its moisture
said-metric = kg and mm
said-inch = lb and inches
said-uk = English, British words
said-us = English, American words
said-fr = French
said-es = Spanish
said-bentonite = bentonite
said-natural = its own clay
said-oil = oil
said-fuel-crucible = crucible over gas, oil or charcoal
said-electric-crucible = crucible, electric
said-induction = induction
said-cupola = cupola

## What is typed of a sand and a heap

bench-test-sand = The sand
bench-test-moisture = A handful, weighed wet and dried
bench-test-jar = Shaken in a jar of water and settled
bench-test-wash = Washed until clear
bench-test-burning = Burnt bright red
bench-test-tin = A tin of known volume, rammed full
bench-test-heap = As its book begins
bench-given-name = name
bench-given-shape = grains through a glass
bench-given-clay = the clay that binds it
bench-given-wet = wet
bench-given-dry = dried
bench-given-step = the scale tells apart
bench-given-fine = the fine layer on top
bench-given-all = all that settled
bench-given-dried = dried, before
bench-given-washed = washed and dried
bench-given-burnt = after it
bench-given-volume = what the tin holds
bench-given-holds = the sand in it, struck off
bench-given-moisture = moisture of that sand
bench-given-sand = the sand as it is
bench-given-now = moisture now
bench-given-wanted = moisture wanted
bench-given-tub = the sand in the tub
bench-given-air = temperature of the air
bench-given-humidity = humidity of the air
bench-given-wind = wind
bench-given-sun = sun in W/m², 0 in the shade
bench-given-area = area of the tray
bench-given-layer = depth of the layer
bench-given-weighed = the tub, weighed again
bench-given-after = after
bench-given-least = least moisture of its skin
bench-given-dry_sand = dry sand
bench-given-mix = or all of the mix
bench-given-flasks = or for these flasks
said-rounded = rounded
said-sub-angular = worn edges
said-angular = sharp edges
said-compound = grains stuck together
said-sodium-bentonite = sodium bentonite
said-calcium-bentonite = calcium bentonite
said-other = fireclay or clay as dug

## A part that is described

shape-sizes = five sizes
shape-box = box
shape-cylinder = round bar or disc
shape-tube = tube
shape-cone = cone
shape-ball = ball
shape-ellipsoid = ellipsoid
shape-ring = ring
shape-block = block
shape-disc = disc
shape-plate = plate
shape-frame = frame
shape-shell = shell
shape-any = none of these
size-length = length
size-width = width
size-height = height, upright
size-thickest = thickest section
size-thinnest = thinnest wall
size-diameter = diameter
size-bore = bore
size-top = across its top
size-thickness = thickness of its bar
