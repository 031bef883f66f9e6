using PlatformForge.Geometry;
using PlatformForge.Track.Surveys.Readings;

namespace PlatformForge.Track.Surveys.Fitting.Lines;

/// <summary>Something measured that a line has to meet, told exactly.</summary>
internal abstract record FitTarget(double Sigma)
{
    /// <summary>How far, in mm, what was measured lies from what the line says.</summary>
    public abstract double Miss(Centreline line);
}

/// <summary>A place at an offset from the centreline; the miss is square to the track, positive to the left.</summary>
internal sealed record PlaceTarget(Point2 Place, double FromCentre, double Guess, double Sigma) : FitTarget(Sigma)
{
    public override double Miss(Centreline line) => line.Locate(Place, Guess).Offset - FromCentre;
}

/// <summary>A versine, or the weighted mean of versines at some chainages.</summary>
internal sealed record VersineTarget(double[] Chainages, double[] Weights, double Versine, double Chord, double FromCentre, double Sigma) : FitTarget(Sigma)
{
    public override double Miss(Centreline line)
    {
        double miss = Versine;
        for (int k = 0; k < Chainages.Length; k++)
        {
            miss -= Weights[k] * VersineOfLine.Of(line, Chainages[k], Chord, FromCentre);
        }

        return miss;
    }
}

/// <summary>The length of a closing chord.</summary>
internal sealed record ChordTarget(double From, double To, double Length, double FromCentre, double Sigma) : FitTarget(Sigma)
{
    public override double Miss(Centreline line) => Length - (line.PointAt(To, FromCentre) - line.PointAt(From, FromCentre)).Length;
}

/// <summary>The height of the line over the middle of a closing chord.</summary>
internal sealed record ChordHeightTarget(double From, double To, double Height, double FromCentre, double Sigma) : FitTarget(Sigma)
{
    private const int MostRounds = 20;

    public override double Miss(Centreline line)
    {
        Point2 from = line.PointAt(From, FromCentre), to = line.PointAt(To, FromCentre), middle = (from + to) * 0.5, along = to - from;
        double s = (From + To) / 2;
        for (int round = 0; round < MostRounds; round++)
        {
            var frame = line.At(s);
            double step = Point2.Dot(middle - frame.At(FromCentre), along) / Point2.Dot(frame.Tangent, along);
            s += double.IsFinite(step) ? Math.Clamp(step, (From - To) / 4, (To - From) / 4) : 0;
        }

        return Height - VersineOfLine.HeightOver(from, to, line.PointAt(s, FromCentre));
    }
}
