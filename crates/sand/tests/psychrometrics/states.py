"""Writes psychrolib.csv: states of moist air by the PyPI library psychrolib 2.5.0.

Run once with `python3 states.py > psychrolib.csv`; the test reads the table, so that it runs
without Python.
"""

import psychrolib

psychrolib.SetUnitSystem(psychrolib.SI)
print("celsius,humidity,pascal,ratio,wet_bulb,dew_point,enthalpy,volume,saturation")
for celsius in (5.0, 15.0, 20.0, 28.0, 35.0, 50.0, 80.0):
    for humidity in (0.1, 0.3, 0.6, 0.78, 0.95):
        for pascal in (101325.0, 84000.0):
            ratio = psychrolib.GetHumRatioFromRelHum(celsius, humidity, pascal)
            wet = psychrolib.GetTWetBulbFromRelHum(celsius, humidity, pascal)
            dew = psychrolib.GetTDewPointFromRelHum(celsius, humidity)
            heat = psychrolib.GetMoistAirEnthalpy(celsius, ratio)
            volume = psychrolib.GetMoistAirVolume(celsius, ratio, pascal)
            steam = psychrolib.GetSatVapPres(celsius)
            row = (celsius, humidity, pascal, ratio, wet, dew, heat, volume, steam)
            print(",".join(f"{one:.8g}" for one in row))
