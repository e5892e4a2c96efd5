"""Door of the computing room: objects to numbers, pure functions. It never sees a file, a date or a locale."""

from builder.computing.allowance import AllowanceLine, StationAllowance, allowance_factor, station_allowance
from builder.computing.calibrate import Calibration, Constant, TimedSeam, calibrate
from builder.computing.candidates import Candidate, element_candidates
from builder.computing.cut_path import cut_contours, cut_length, mark_areas, nearest_next
from builder.computing.cut_time import chop_time, contour_time, cycle_time, mark_time, raster_time
from builder.computing.learning import (
    average_total,
    average_unit_time,
    exponent,
    fit_learning,
    newcomer_factor,
    newcomer_weeks,
    rate_from_total,
    rate_of,
    unit_time,
    unit_total,
    unit_total_approximate,
)
from builder.computing.line_fit import fit_half, fit_line, fit_refusal, fitted, prediction_half
from builder.computing.material_use import operation_use, product_use
from builder.computing.mixed_sheet import run_share
from builder.computing.motion import corner_speeds, path_time, segment_time
from builder.computing.occurrence import lots_of, occurrences, pieces_a_bobbin
from builder.computing.operation_time import attendance_share, labour, operation_time, rested_inside
from builder.computing.plant_time import compute, operation_dimensions, variants
from builder.computing.pooling import pooled
from builder.computing.relaxation import OWN, PUBLISHED, StrainFactor, rest_in_spell, strain_factors
from builder.computing.sew_time import running_time, seam_time, tack_time
from builder.computing.sewn_thread import SewnThread, thread_names, thread_sewn
from builder.computing.shift_capacity import Crew, capacity, crew_of
from builder.computing.spread import (
    drift_z,
    interval,
    modified_z,
    readings_normal,
    readings_root,
    readings_t_iterated,
    readings_t_pilot,
    sample_sd,
    t_quantile,
    z_quantile,
)
from builder.computing.standard_data import element_data, standard_data
from builder.computing.step_seconds import step_standard
from builder.computing.study_summary import cycle_values, readings_needed, step_study, summarise
from builder.computing.tending import Interference, cycle_in_step, interference, machines_in_step, tending_of
from builder.computing.thread_use import (
    ThreadUse,
    bartack_thread,
    ratio_factors,
    sampled_factors,
    tack_thread,
    tail_thread,
    thread_factors,
)
from builder.computing.timed_seams import StationFit, station_fits

__all__ = [
    "StationFit",
    "station_fits",
    "AllowanceLine",
    "Calibration",
    "Candidate",
    "Constant",
    "Crew",
    "Interference",
    "OWN",
    "PUBLISHED",
    "SewnThread",
    "StationAllowance",
    "StrainFactor",
    "ThreadUse",
    "TimedSeam",
    "allowance_factor",
    "attendance_share",
    "average_total",
    "average_unit_time",
    "bartack_thread",
    "calibrate",
    "capacity",
    "chop_time",
    "compute",
    "contour_time",
    "corner_speeds",
    "crew_of",
    "cut_contours",
    "cut_length",
    "cycle_in_step",
    "cycle_time",
    "cycle_values",
    "drift_z",
    "element_candidates",
    "element_data",
    "exponent",
    "fit_half",
    "fit_learning",
    "fit_line",
    "fit_refusal",
    "fitted",
    "interference",
    "interval",
    "labour",
    "lots_of",
    "machines_in_step",
    "mark_areas",
    "mark_time",
    "modified_z",
    "nearest_next",
    "newcomer_factor",
    "newcomer_weeks",
    "occurrences",
    "operation_dimensions",
    "operation_time",
    "operation_use",
    "path_time",
    "pieces_a_bobbin",
    "pooled",
    "prediction_half",
    "product_use",
    "raster_time",
    "rate_from_total",
    "rate_of",
    "ratio_factors",
    "readings_needed",
    "readings_normal",
    "readings_root",
    "readings_t_iterated",
    "readings_t_pilot",
    "rest_in_spell",
    "rested_inside",
    "run_share",
    "running_time",
    "sample_sd",
    "sampled_factors",
    "seam_time",
    "segment_time",
    "standard_data",
    "station_allowance",
    "step_standard",
    "step_study",
    "strain_factors",
    "summarise",
    "t_quantile",
    "tack_thread",
    "tack_time",
    "tail_thread",
    "tending_of",
    "thread_factors",
    "thread_names",
    "thread_sewn",
    "unit_time",
    "unit_total",
    "unit_total_approximate",
    "variants",
    "z_quantile",
]
