using PlatformForge.Track.Surveys.Admissible;
using PlatformForge.Track.Surveys.Readings;

namespace PlatformForge.Track.Surveys.Results;

/// <summary>One thing which, if it was otherwise than read or stated, would let the readings go with pieces as stated. Each was tried: the survey was
/// fitted anew with it.</summary>
/// <param name="Cost">What the readings then cost over those pieces, with a price for what is altered: the least is the likeliest.</param>
internal abstract record SectionalCause(double Cost);

/// <summary>One reading is misread.</summary>
/// <param name="Told">The reading, held against what the others ask for.</param>
/// <param name="Cost">See <see cref="SectionalCause"/>.</param>
internal sealed record MisreadCause(ReadingResidual Told, double Cost) : SectionalCause(Cost);

/// <summary>Some pieces have a radius that is not stated.</summary>
/// <param name="Radius">A radius that does, mm.</param>
/// <param name="Instead">Whether the one radius that is stated is false; otherwise this one comes beside the stated ones.</param>
/// <param name="Cost">See <see cref="SectionalCause"/>.</param>
internal sealed record RadiusCause(double Radius, bool Instead, double Cost) : SectionalCause(Cost);

/// <summary>The track turns by more at a joint.</summary>
/// <param name="Kink">A greatest kink that does, radians.</param>
/// <param name="Cost">See <see cref="SectionalCause"/>.</param>
internal sealed record KinkCause(double Kink, double Cost) : SectionalCause(Cost);

/// <summary>A joint lies elsewhere.</summary>
/// <param name="Joint">The joint and its place.</param>
/// <param name="Cost">See <see cref="SectionalCause"/>.</param>
internal sealed record JointCause(MovedJoint Joint, double Cost) : SectionalCause(Cost);
