using PlatformForge.Clearance.Vehicles;

namespace PlatformForge.Clearance;

/// <summary>
/// Where the door sill of a standing vehicle may lie at each station, with no play: greatest when the station faces the part of the body that the
/// curve throws out, least when it faces the part thrown away. Gap tables use both. Not a number where the sill never comes.
/// </summary>
/// <param name="Vehicle">The vehicle.</param>
/// <param name="Height">Height of the sill above rail top, mm.</param>
/// <param name="From">Chart chainage of the first station, mm.</param>
/// <param name="Spacing">Distance between stations, mm.</param>
/// <param name="Greatest">Nearest to the platform at each station: reach from the chart line on the platform's side, mm.</param>
/// <param name="Least">Farthest from the platform, mm.</param>
public sealed record SillReach(Vehicle Vehicle, double Height, double From, double Spacing, double[] Greatest, double[] Least);
