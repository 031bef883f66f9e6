using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Track.Surveys.Readings;

namespace PlatformForge.Tests.Track.Surveys.Admissible;

/// <summary>Made-up sectional track with joints that are stated.</summary>
internal static class MadeUpPieces
{
    private const double Piece = 168, Degree = Math.PI / 180;

    /// <summary>Radii that pieces are made of, mm.</summary>
    public static readonly double[] Radii = [438, 505, 571.5];

    /// <summary>What is said of the pieces.</summary>
    public static Laying Said(IReadOnlyList<double> joints, IReadOnlyList<double> radii) =>
        Laying.Usual(76.2, LaidAs.Sectional) with { Joints = joints, Radii = radii };

    /// <summary>A survey whose joints, chainages of the line, are told along the string, to the millimetre.</summary>
    public static PlaceSurvey Told(PlaceSurvey survey, Centreline line)
    {
        Point2 from = line.At(0).Position, taut = line.At(line.Length).Position - from, along = taut * (1 / taut.Length);
        return survey
            with
        { Laying = survey.Laying with { Joints = [.. survey.Laying.Joints.Select(j => Math.Round(Point2.Dot(line.At(j).Position - from, along)))] } };
    }

    /// <summary>Straight, some pieces of one radius, straight; kinks of up to 2° at the joints, with their chainages.</summary>
    public static (Centreline Line, double[] Joints) Pieces(Random random)
    {
        double radius = Radii[random.Next(3)];
        int before = 1 + random.Next(2), curved = 3 + random.Next(2);
        var hand = random.Next(2) == 0 ? Hand.Left : Hand.Right;
        var elements = new List<AlignmentElementSpec>();
        var joints = new List<double>();
        for (int p = 0; p < before + curved + 3; p++)
        {
            if (p > 0)
            {
                elements.Add(new KinkSpec(2 * Degree * random.NextDouble(), random.Next(2) == 0 ? Hand.Left : Hand.Right));
                joints.Add(p * Piece);
            }

            elements.Add(p < before || p >= before + curved ? new StraightSpec(Piece) : new CurveSpec(radius, hand, Length: Piece));
        }

        return (TrackLayer.Lay(new("pieces", new(10, 20), 0.3, elements)).Value!, [.. joints]);
    }
}
