using Xunit.Sdk;

namespace PlatformForge.Tests;

/// <summary>
/// The assertions of these tests. A claim about all of nothing is true and says nothing: here it fails, so that no test goes on passing after what
/// it looks at is gone.
/// </summary>
public class Assert : Xunit.Assert
{
    /// <summary>Every one of at least one.</summary>
    public static new void All<T>(IEnumerable<T> collection, Action<T> action) => All(collection, (item, _) => action(item));

    /// <summary>Every one of at least one, with its place.</summary>
    public static new void All<T>(IEnumerable<T> collection, Action<T, int> action)
    {
        T[] all = [.. collection];
        if (all.Length == 0)
        {
            throw new XunitException("Assert.All() Failure: there is nothing that it could look at. Where nothing is an answer too, say AllOrNone.");
        }

        Xunit.Assert.All(all, action);
    }

    /// <summary>Every one of however many, of made-up cases that may have none. Use it only where another claim holds that there are some elsewhere.</summary>
    public static void AllOrNone<T>(IEnumerable<T> collection, Action<T> action) => Xunit.Assert.All(collection, action);
}
