using System.Diagnostics;
using System.Reflection;
using Xunit.Abstractions;
using Xunit.Sdk;

namespace PlatformForge.Mutants;

/// <summary>Runs classes of tests in this process one after another, and stops at the first test that fails.</summary>
internal sealed class ClassRun : IMessageSink, IDisposable
{
    private readonly ManualResetEventSlim done = new();
    private readonly XunitTestFramework framework;
    private readonly Assembly tests;

    public ClassRun()
    {
        framework = new XunitTestFramework(new NullMessageSink());
        tests = Assembly.Load("PlatformForge.Tests");
    }

    /// <summary>Name and message of the test that failed; null when none did.</summary>
    public string? Failed { get; private set; }

    /// <summary>How many tests passed.</summary>
    public int Passed { get; private set; }

    public static IEnumerable<string> Names() => Assembly.Load("PlatformForge.Tests").GetTypes()
        .Where(t => t.IsClass && !t.IsAbstract && t.GetMethods().Any(m => m.GetCustomAttributes().Any(a => a is Xunit.FactAttribute)))
        .Select(t => t.FullName!).Order(StringComparer.Ordinal);

    /// <summary>Whether all tests of a class pass.</summary>
    public bool Pass(string type)
    {
        var options = new Options();
        var cases = new Collected();
        using (var discoverer = framework.GetDiscoverer(Reflector.Wrap(tests)))
        {
            discoverer.Find(type, includeSourceInformation: false, cases, options);
            cases.Done.Wait();
        }

        done.Reset();
        using var executor = framework.GetExecutor(tests.GetName());
        executor.RunTests(cases.Cases, this, options);
        done.Wait();
        return Failed is null;
    }

    public bool OnMessage(IMessageSinkMessage message)
    {
        switch (message)
        {
            case ITestPassed:
                Passed++;
                break;
            case ITestFailed failed:
                Failed ??= $"{failed.Test.DisplayName}: {failed.Messages.FirstOrDefault()?.Split('\n')[0]}";
                return false;
            case ITestAssemblyFinished:
                done.Set();
                break;
        }

        return Failed is null;
    }

    public void Dispose()
    {
        done.Dispose();
        framework.Dispose();
    }

    private sealed class Collected : IMessageSink
    {
        public List<ITestCase> Cases { get; } = [];

        public ManualResetEventSlim Done { get; } = new();

        public bool OnMessage(IMessageSinkMessage message)
        {
            if (message is ITestCaseDiscoveryMessage found)
            {
                Cases.Add(found.TestCase);
            }
            else if (message is IDiscoveryCompleteMessage)
            {
                Done.Set();
            }

            return true;
        }
    }

    private sealed class Options : ITestFrameworkDiscoveryOptions, ITestFrameworkExecutionOptions
    {
        private readonly Dictionary<string, object?> values = new(StringComparer.Ordinal)
        {
            ["xunit.discovery.PreEnumerateTheories"] = false,
            ["xunit.execution.DisableParallelization"] = true,
            ["xunit.execution.MaxParallelThreads"] = 1,
            ["xunit.execution.StopOnTestFail"] = true,
            ["xunit.execution.SynchronousMessageReporting"] = true,
        };

        public TValue GetValue<TValue>(string name) => values.TryGetValue(name, out object? value) ? (TValue)value! : default!;

        public void SetValue<TValue>(string name, TValue value) => values[name] = value;
    }
}
