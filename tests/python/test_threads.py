"""Any number of threads may call at once and get what one thread gets."""

import threading
import time
from concurrent.futures import ThreadPoolExecutor

import beamcraft


def work(k: int) -> tuple[str, str, str, str]:
    thickness = 5 + k % 40
    typed = beamcraft.mitre_pair(thickness_a_mm=thickness, thickness_b_mm=20, corner_deg=90 + k % 7)
    text = f'{{"thickness_a_mm": {thickness}, "thickness_b_mm": 20, "corner_deg": {90 + k % 7}}}'
    nested = beamcraft.list_wood_screws()
    try:
        beamcraft.mitre_pair(thickness_a_mm=-k - 1, thickness_b_mm=20)
    except beamcraft.InputError as fault:
        refused = fault.value
    return typed.to_json(), beamcraft.call_json("mitre_pair", text), nested.to_json(), refused


def test_threads_agree_with_one_thread() -> None:
    jobs = list(range(600))
    alone = [work(k) for k in jobs]
    for typed, by_name, _, _ in alone:
        assert typed == by_name
    with ThreadPoolExecutor(8) as pool:
        assert list(pool.map(work, jobs)) == alone


def test_one_object_is_read_by_many_threads() -> None:
    shared = beamcraft.list_wood_screws()
    wanted = (repr(shared), shared.to_json(), shared._repr_html_())
    faults = []

    def read() -> None:
        for _ in range(50):
            if (repr(shared), shared.to_json(), shared._repr_html_()) != wanted:
                faults.append(threading.get_ident())

    threads = [threading.Thread(target=read) for _ in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert not faults


def test_another_thread_goes_on_during_calls() -> None:
    count = 0
    done = threading.Event()

    def tick() -> None:
        nonlocal count
        while not done.is_set():
            count += 1
            time.sleep(0)

    thread = threading.Thread(target=tick)
    thread.start()
    for _ in range(300):
        beamcraft.call("list_wood_screws", {})
    done.set()
    thread.join()
    assert count > 0
