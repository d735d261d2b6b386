"""The obvious notebook job on a log: read it, path angle from the climb, losses, their integrals; processor times as JSON."""

import json
import sys
import time

started = time.process_time()
import numpy as np

try:
    import pandas as pd
except ImportError:
    pd = None
try:
    from scipy.signal import savgol_filter
except ImportError:
    savgol_filter = None
imported = time.process_time()

path = sys.argv[1]
wanted = ["time_s", "altitude_m", "speed_m_s", "mass_kg", "throttle", "pitch_deg"]
if pd is not None:
    frame = pd.read_csv(path)
    t, h, v, m, throttle, pitch = (frame[name].to_numpy() for name in wanted)
    reader = "pandas.read_csv"
else:
    with open(path) as file:
        names = file.readline().strip().split(",")
    table = np.loadtxt(path, delimiter=",", skiprows=1)
    t, h, v, m, throttle, pitch = (table[:, names.index(name)] for name in wanted)
    reader = "numpy.loadtxt"
read = time.process_time()

mu, radius, isp, exit_area, g0 = 6.8231e13, 3.1e6, 290.0, 0.8, 9.80665
step = np.median(np.diff(t))
window = max(5, int(2 / step) | 1)
if savgol_filter is not None and window < len(t):
    climb = savgol_filter(h, window, 2, deriv=1, delta=step)
else:
    climb = np.gradient(h, t)
sine = np.clip(climb / np.maximum(v, 1), -1, 1)
path_angle = np.arcsin(sine)
gravity = mu / (radius + h) ** 2
flow = np.maximum(0, -np.gradient(m, t)) * (throttle > 0)
vacuum = flow * g0 * isp / m
back = np.where(throttle > 0, 78000 * np.exp(-h / 6000) * exit_area / m, 0)
steering = (vacuum - back) * (1 - np.cos(np.radians(pitch) - path_angle))
total = lambda f: float(np.sum((f[1:] + f[:-1]) / 2 * np.diff(t)))
losses = {
    "ideal": total(vacuum),
    "backPressure": total(back),
    "steering": total(steering),
    "gravity": total(gravity * sine),
    "speedGained": float(v[-1] - v[0]),
}
done = time.process_time()
print(json.dumps({
    "reader": reader,
    "imports": (imported - started) * 1000,
    "read": (read - imported) * 1000,
    "compute": (done - read) * 1000,
    "whole": (done - started) * 1000,
    "losses": losses,
}))
