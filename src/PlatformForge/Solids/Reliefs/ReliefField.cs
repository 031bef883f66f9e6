namespace PlatformForge.Solids.Reliefs;

/// <summary>A rectangle of a wall panel, unrolled, that stands out of the wall or is sunk into it; its sides are square to the wall.</summary>
/// <param name="From">Start along the panel, mm, from the left seen from outside.</param>
/// <param name="To">End along the panel, mm.</param>
/// <param name="Low">Lower side, height over the baseboard, mm.</param>
/// <param name="High">Upper side, height over the baseboard, mm.</param>
/// <param name="Out">How far it stands out, mm; sunk when negative; never nought.</param>
public readonly record struct ReliefField(double From, double To, double Low, double High, double Out);
