using PlatformForge.Clearance.Vehicles;
using PlatformForge.Platforms.Requests;

namespace PlatformForge.Exports.Files;

/// <summary>Where a vehicle comes nearest to a platform's coping, for drawings.</summary>
/// <param name="Pose">The vehicle as it stands there, without play.</param>
/// <param name="Part">Its part that comes nearest.</param>
/// <param name="Chainage">Where, mm along the plan's chart.</param>
/// <param name="Reach">How far it reaches there, play included, mm from the track's middle.</param>
/// <param name="Left">From there to the coping, square to the track, mm.</param>
public sealed record TightPlace(VehicleOutlinePose Pose, string Part, double Chainage, double Reach, double Left)
{
    /// <summary>The stretch along which it comes as near, chainages in mm: on a constant curve a long one.</summary>
    public (double From, double To) Stretch { get; init; } = (Chainage, Chainage);

    /// <summary>The least that is left from any of its parts to the coping, at any chainage, on whichever of the lines that surveys admit the track lies;
    /// null where no survey was made, or a figure for it was stated.</summary>
    public SurveyedLeft? OnAnyLine { get; init; }

    /// <summary>Where it comes nearest, in words: a chainage, or a stretch of equal places.</summary>
    public string Where => Stretch.To - Stretch.From > Stretched
        ? FormattableString.Invariant($"{Stretch.From:0} to {Stretch.To:0}")
        : FormattableString.Invariant($"{Chainage:0}");

    // mm: a shorter stretch is a place.
    private const double Stretched = 10;

    /// <summary>The vehicle as it is told: by its name, and with its track where that is another than the platform's own.</summary>
    public string Called => RequirementTrace.Called(Pose.Vehicle.Name, Pose.OtherTrack);
}

/// <summary>What a survey leaves between a vehicle and the coping on the line that brings it nearest.</summary>
/// <param name="Left">Distance square to the track, mm.</param>
/// <param name="Chainage">Where, mm along the plan's chart.</param>
public sealed record SurveyedLeft(double Left, double Chainage);
